import { useMemo } from 'react';
import type { DayCurves } from '../../../shared-types/log.ts';
import { MarkKey } from '../charts/mark-key.tsx';
import { mergedPhases } from '../charts/merged-phases.ts';
import { PaperKey, PaperReport } from '../charts/paper-report.tsx';
import { PhaseRibbon, RibbonKey } from '../charts/phase-ribbon.tsx';
import type { SeriesName } from '../charts/series.ts';
import { usePrintedChart } from '../charts/use-printed-chart.ts';
import { wholeSpan } from '../charts/whole-span.ts';
import { useChartLook, useTimes } from '../shell/use-formats.ts';
import { en } from '../text/en.ts';
import { DayEvents } from './day-events.tsx';
import { DayFacts } from './day-facts.tsx';
import styles from './day-report.module.css';

const text = en.days;

interface Props {
  readonly site: string;
  readonly curves: DayCurves;
  readonly names: readonly SeriesName[];
}

/** Events that one page has room for beside the curves. */
const mostEvents = 12;

/** The day on one page of paper. */
export function DayReport({ site, curves, names }: Props) {
  const times = useTimes();
  const { timeZone } = useChartLook();
  const phases = useMemo(() => mergedPhases(curves.phases), [curves]);
  const span = useMemo(() => wholeSpan(curves), [curves]);
  const told = curves.events.filter((event) => event.kind !== 'phase-changed');
  const canvas = usePrintedChart(curves, names);
  return (
    <PaperReport site={site}>
      <p>
        {times.day(curves.day)}. {text.report.logged(times.clock(span.fromMs), times.clock(span.toMs))}.{' '}
        {text.report.zone(timeZone)}.
      </p>
      <DayFacts site={site} day={curves.day} />
      {/* As wide as A4 between its margins, so that the ribbon stands under the curves. */}
      <canvas className={styles['curves']} ref={canvas} width={700} height={440} />
      <PhaseRibbon phases={phases} window={span} />
      <PaperKey names={names} />
      <RibbonKey phases={phases}>
        <MarkKey events={curves.events} />
      </RibbonKey>
      <h2 className={styles['events']}>{text.events}</h2>
      <DayEvents events={told.slice(0, mostEvents)} />
      {told.length > mostEvents ? <p>{text.report.more(told.length - mostEvents)}</p> : null}
    </PaperReport>
  );
}
