import { SegmentedControl } from '@mantine/core';
import { useMemo, useState } from 'react';
import type { SweepPoint, SweepReport } from '../../../../shared-types/tuning.ts';
import { inLine } from '../../format/numbers.ts';
import { heatIn } from '../../format/units.ts';
import type { FormPart } from '../../setpoints/form-part.ts';
import { Card } from '../../shell/card.tsx';
import { useChartLook, useNumbers } from '../../shell/use-formats.ts';
import { en } from '../../text/en.ts';
import { changeText, sameSettings } from '../changed-settings.ts';
import { signedText } from '../other/gain.ts';
import styles from '../tuning.module.css';
import { AdviceNote } from './advice-note.tsx';
import { ChosenPoint } from './chosen-point.tsx';
import many from './many.module.css';
import { MarkLegend } from './mark-legend.tsx';
import { PointTable } from './point-table.tsx';
import { SweepNotes } from './sweep-notes.tsx';
import { advisedIndex, type Cost, costs, plotted } from './trade-off.ts';
import { TradeOffChart } from './trade-off-chart.tsx';

const text = en.tuning.many;

interface Props {
  readonly site: string;
  readonly report: SweepReport;
  /** True when it answers another question than the one that is now in the form. */
  readonly old: boolean;
  readonly olderFit: boolean;
  readonly part: FormPart;
}

/** What many setpoints would have brought: advice, trade-off, the same as a table, and a way to look into one. */
export function SweepView({ site, report, old, olderFit, part }: Props) {
  const numbers = useNumbers();
  const { units } = useChartLook();
  const advised = advisedIndex(report);
  const [cost, setCost] = useState<Cost>('starts');
  const [chosen, setChosen] = useState<number | null>(advised);
  const { points } = report;
  const marks = useMemo(
    () =>
      plotted(points, cost, {
        heat: (valueJ) => heatIn(units.heat, valueJ),
        cost: (value) => (cost === 'electricityJ' ? heatIn(units.heat, value) : value),
      }),
    [points, cost, units],
  );
  const heat = (valueJ: number) => inLine(numbers.heat(valueJ));
  const amount = (point: SweepPoint) =>
    cost === 'electricityJ' ? heat(point.electricityJ) : numbers.count(point[cost]);
  const labelOf = (point: SweepPoint) =>
    text.mark(
      changeText(point.change, units.temperature, text.inForce),
      signedText(point.heatGainJ.value, heat),
      text.axes[cost],
      amount(point),
    );
  return (
    <Card heading={text.result(report.days.length)}>
      <div className={styles['stack']}>
        {old ? <p className={styles['old']}>{text.old}</p> : null}
        {olderFit ? <p className={styles['old']}>{en.tuning.fit.older}</p> : null}
        {sameSettings(report.settingsInForce, part.inForce) ? null : (
          <p className={styles['old']}>{text.moved}</p>
        )}
        <AdviceNote report={report} />
        <div className={styles['row']}>
          <h3>{text.chart}</h3>
          <SegmentedControl
            aria-label={text.against}
            value={cost}
            data={costs.map((value) => ({ value, label: text.axes[value] }))}
            onChange={setCost}
          />
        </div>
        <div className={many['columns']}>
          <div>
            <TradeOffChart
              {...{ marks, cost, chosen, advised, labelOf }}
              units={{ heat: units.heat, cost: cost === 'electricityJ' ? units.heat : '' }}
              onChoose={setChosen}
            />
            <MarkLegend />
            <p className={styles['soft']}>{text.keys}</p>
          </div>
          <ChosenPoint {...{ site, report, part }} index={chosen} />
        </div>
        <PointTable {...{ site, report, chosen }} onChoose={setChosen} />
        <SweepNotes report={report} />
      </div>
    </Card>
  );
}
