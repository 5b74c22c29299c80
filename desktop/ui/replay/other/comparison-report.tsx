import type { DayCurves } from '../../../../shared-types/log.ts';
import type { Comparison } from '../../../../shared-types/tuning.ts';
import { mergedPhases } from '../../charts/merged-phases.ts';
import { PaperKey, PaperReport } from '../../charts/paper-report.tsx';
import { PhaseRibbon, RibbonKey } from '../../charts/phase-ribbon.tsx';
import type { SeriesName } from '../../charts/series.ts';
import { useDrawnSeries } from '../../charts/use-drawn-series.ts';
import { usePrintedChart } from '../../charts/use-printed-chart.ts';
import { wholeSpan } from '../../charts/whole-span.ts';
import { useChartLook, useNumbers, useTimes } from '../../shell/use-formats.ts';
import { en } from '../../text/en.ts';
import { sameSettings } from '../changed-settings.ts';
import { AbsorbedCard } from './absorbed-card.tsx';
import styles from './comparison-report.module.css';
import { gainText } from './gain.ts';
import { GroundCard } from './ground-card.tsx';
import { GroundStrip } from './ground-strip.tsx';
import { RestsCard } from './rests-card.tsx';
import { SideTable } from './side-table.tsx';

const text = en.tuning.other;

interface Props {
  readonly site: string;
  readonly comparison: Comparison;
  readonly olderFit: boolean;
}

/** The comparison on paper. */
export function ComparisonReport({ site, comparison, olderFit }: Props) {
  const times = useTimes();
  const numbers = useNumbers();
  const { timeZone } = useChartLook();
  const { base, tried } = comparison.curves;
  const { names } = useDrawnSeries(base);
  const { settingsThen, settingsTried, heatGainJ, leftGround } = comparison;
  return (
    <PaperReport site={site}>
      <p>
        {text.result(times.day(comparison.day))}. {text.printed(timeZone)}
      </p>
      {olderFit ? <p>{en.tuning.fit.older}</p> : null}
      <p>
        <strong>{gainText(heatGainJ, sameSettings(settingsThen, settingsTried), numbers)}</strong>
      </p>
      <SideTable comparison={comparison} />
      <div className={styles['part']}>
        <RestsCard comparison={comparison} />
      </div>
      <PrintedSide side={text.base} curves={base} names={names} />
      <PrintedSide side={text.tried} curves={tried} names={names} />
      <GroundStrip spans={leftGround} window={wholeSpan(base)} />
      <PaperKey names={names} />
      <RibbonKey phases={[...base.phases, ...tried.phases]} />
      <div className={styles['part']}>
        <GroundCard comparison={comparison} />
      </div>
      <AbsorbedCard comparison={comparison} />
    </PaperReport>
  );
}

interface SideProps {
  readonly side: string;
  readonly curves: DayCurves;
  readonly names: readonly SeriesName[];
}

function PrintedSide({ side, curves, names }: SideProps) {
  const canvas = usePrintedChart(curves, names);
  return (
    <div className={styles['side']}>
      <h2>{side}</h2>
      {/* As wide as A4 between its margins, so that the ribbon stands under the curves. */}
      <canvas ref={canvas} width={700} height={330} />
      <PhaseRibbon phases={mergedPhases(curves.phases)} window={wholeSpan(curves)} />
    </div>
  );
}
