import { useMemo } from 'react';
import { createPortal } from 'react-dom';
import type { DayCurves } from '../../../shared-types/log.ts';
import { MarkKey } from '../charts/mark-key.tsx';
import { mergedPhases } from '../charts/merged-phases.ts';
import { PhaseRibbon, RibbonKey } from '../charts/phase-ribbon.tsx';
import { type SeriesName, seriesTitle } from '../charts/series.ts';
import { SeriesSample } from '../charts/series-sample.tsx';
import { usePrintedChart } from '../charts/use-printed-chart.ts';
import { wholeSpan } from '../charts/whole-span.ts';
import { useChartLook, useTimes } from '../shell/use-formats.ts';
import { selectSiteTitle } from '../store/live-selectors.ts';
import { useLive } from '../store/live-store.ts';
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

/** The day on one page of paper. It stands beside the page and is seen by printers only. */
export function DayReport({ site, curves, names }: Props) {
  const times = useTimes();
  const title = useLive(selectSiteTitle) ?? site;
  const { timeZone } = useChartLook();
  const phases = useMemo(() => mergedPhases(curves.phases), [curves]);
  const span = useMemo(() => wholeSpan(curves), [curves]);
  const told = curves.events.filter((event) => event.kind !== 'phase-changed');
  const canvas = usePrintedChart(curves, names);
  return createPortal(
    <div className={styles['report']} data-report="" aria-hidden="true">
      <h1>{title}</h1>
      <p>
        {times.day(curves.day)}. {text.report.logged(times.clock(span.fromMs), times.clock(span.toMs))}.{' '}
        {text.report.zone(timeZone)}.
      </p>
      <DayFacts site={site} day={curves.day} />
      {/* As wide as A4 between its margins, so that the ribbon stands under the curves. */}
      <canvas ref={canvas} width={700} height={440} />
      <PhaseRibbon phases={phases} window={span} />
      <ul className={styles['key']}>
        {names.map((name) => (
          <li key={name}>
            <SeriesSample name={name} scheme="light" /> {seriesTitle(name)}
          </li>
        ))}
      </ul>
      <MarkKey events={curves.events} />
      <RibbonKey phases={phases} />
      <h2>{text.events}</h2>
      <DayEvents events={told.slice(0, mostEvents)} />
      {told.length > mostEvents ? <p>{text.report.more(told.length - mostEvents)}</p> : null}
    </div>,
    document.body,
  );
}
