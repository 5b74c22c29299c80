import { SegmentedControl } from '@mantine/core';
import { useId, useState } from 'react';
import type { SweepReport } from '../../../../shared-types/tuning.ts';
import { csvText } from '../../format/csv.ts';
import { useChartLook } from '../../shell/use-formats.ts';
import { en } from '../../text/en.ts';
import blocks from '../blocks.module.css';
import { SaveTable } from '../save-table.tsx';
import styles from '../tuning.module.css';
import many from './many.module.css';
import { PointRow } from './point-row.tsx';
import { sweepTable } from './sweep-csv.ts';
import { tableOrder } from './trade-off.ts';

const text = en.tuning.many;

interface Props {
  readonly site: string;
  readonly report: SweepReport;
  readonly chosen: number | null;
  readonly onChoose: (index: number) => void;
}

/** The trade-off as a table: whatever the marks do is done here as well. */
export function PointTable({ site, report, chosen, onChoose }: Props) {
  const group = useId();
  const { units } = useChartLook();
  const [shown, setShown] = useState<'front' | 'all'>('front');
  const days = [...report.days].sort();
  return (
    <div className={styles['stack']}>
      <div className={styles['row']}>
        <h3>{text.table}</h3>
        <SegmentedControl
          aria-label={text.show}
          value={shown}
          data={[
            { value: 'front', label: text.shown.front },
            { value: 'all', label: text.shown.all },
          ]}
          onChange={setShown}
        />
        <SaveTable
          label={text.csv}
          nameParts={[site, days[0] ?? '', days.at(-1) ?? '', 'setpoints']}
          table={() => csvText(sweepTable(report, units))}
        />
      </div>
      <table className={`ruled ${many['table']} ${blocks['blocks']}`}>
        <thead>
          <tr>
            <th scope="col">{text.columns.setpoints}</th>
            <th scope="col">{text.columns.gain}</th>
            <th scope="col">{text.columns.heat}</th>
            <th scope="col">{text.columns.starts}</th>
            <th scope="col">{text.columns.fills}</th>
            <th scope="col">{text.columns.electricity}</th>
            <th scope="col">{text.columns.frost}</th>
            <th scope="col">{text.columns.liner}</th>
            <th scope="col">{text.columns.beyondLog}</th>
            <th scope="col">{text.columns.front}</th>
          </tr>
        </thead>
        <tbody className="number">
          {tableOrder(report.points, shown === 'front').map((index) => {
            const point = report.points[index];
            return point === undefined ? null : (
              <PointRow
                key={index}
                point={point}
                group={group}
                chosen={index === chosen}
                onChoose={() => onChoose(index)}
              />
            );
          })}
        </tbody>
      </table>
    </div>
  );
}
