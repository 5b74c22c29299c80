import { createPortal } from 'react-dom';
import type { DayCurves } from '../../../../shared-types/log.ts';
import type { Comparison } from '../../../../shared-types/tuning.ts';
import { mergedPhases } from '../../charts/merged-phases.ts';
import { PhaseRibbon, RibbonKey } from '../../charts/phase-ribbon.tsx';
import { type SeriesName, seriesTitle } from '../../charts/series.ts';
import { SeriesSample } from '../../charts/series-sample.tsx';
import { useDrawnSeries } from '../../charts/use-drawn-series.ts';
import { usePrintedChart } from '../../charts/use-printed-chart.ts';
import { wholeSpan } from '../../charts/whole-span.ts';
import { useChartLook, useNumbers, useTimes } from '../../shell/use-formats.ts';
import { selectSiteTitle } from '../../store/live-selectors.ts';
import { useLive } from '../../store/live-store.ts';
import { en } from '../../text/en.ts';
import { sameSettings } from '../changed-settings.ts';
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
}

/** The comparison on paper. It stands beside the page and is seen by printers only. */
export function ComparisonReport({ site, comparison }: Props) {
  const times = useTimes();
  const numbers = useNumbers();
  const title = useLive(selectSiteTitle) ?? site;
  const { timeZone } = useChartLook();
  const { base, tried } = comparison.curves;
  const { names } = useDrawnSeries(base);
  const { settingsThen, settingsTried, heatGainJ, leftGround } = comparison;
  return createPortal(
    <div className={styles['report']} data-report="" aria-hidden="true">
      <h1>{title}</h1>
      <p>
        {text.result(times.day(comparison.day))}. {text.printed(timeZone)}
      </p>
      <p>
        <strong>{gainText(heatGainJ, sameSettings(settingsThen, settingsTried), numbers)}</strong>
      </p>
      <SideTable comparison={comparison} />
      <RestsCard comparison={comparison} />
      <PrintedSide side={text.base} curves={base} names={names} />
      <PrintedSide side={text.tried} curves={tried} names={names} />
      <GroundStrip spans={leftGround} window={wholeSpan(base)} />
      <ul className={styles['key']}>
        {names.map((name) => (
          <li key={name}>
            <SeriesSample name={name} scheme="light" /> {seriesTitle(name)}
          </li>
        ))}
      </ul>
      <RibbonKey phases={[...base.phases, ...tried.phases]} />
      <GroundCard comparison={comparison} />
    </div>,
    document.body,
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
