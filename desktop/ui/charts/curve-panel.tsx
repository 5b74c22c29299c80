import { lazy, Suspense, useCallback, useMemo, useState } from 'react';
import type { DayCurves } from '../../../shared-types/log.ts';
import { loadPart } from '../load-part.ts';
import { selectHiddenSeries, selectShownSeries, useChoices } from '../store/choices-store.ts';
import { en } from '../text/en.ts';
import type { TimeWindow } from './chart-look.ts';
import { CurveTable } from './curve-table.tsx';
import { mergedPhases } from './merged-phases.ts';
import { PhaseRibbon, RibbonKey } from './phase-ribbon.tsx';
import { drawnSeries, presentSeries } from './series.ts';
import { SeriesSwitches } from './series-switches.tsx';

// The chart library is as large as all the rest: the page shows its words before it has it.
const TimeChart = lazy(() => loadPart(() => import('./time-chart.tsx')));

interface Props {
  readonly curves: DayCurves;
  readonly label: string;
  readonly zoomable?: boolean;
  readonly cursorMs?: number | undefined;
}

/** Curves with their switches, the ribbon of phases below them, and the same as a table. */
export function CurvePanel({ curves, label, zoomable = false, cursorMs }: Props) {
  const hidden = useChoices(selectHiddenSeries);
  const shown = useChoices(selectShownSeries);
  const present = useMemo(() => presentSeries(curves), [curves]);
  const names = useMemo(() => drawnSeries(present, hidden, shown), [present, hidden, shown]);
  const phases = useMemo(() => mergedPhases(curves.phases), [curves]);
  const span = useMemo(() => wholeSpan(curves), [curves]);
  const [zoomed, setZoomed] = useState<TimeWindow>(span);
  const onWindow = useCallback((window: TimeWindow) => setZoomed(window), []);
  return (
    <>
      <Suspense fallback={<p>{en.shell.loading}</p>}>
        <TimeChart {...{ curves, names, span, label, zoomable, cursorMs, onWindow }} />
      </Suspense>
      <PhaseRibbon phases={phases} window={zoomed} />
      <RibbonKey phases={phases} />
      <SeriesSwitches present={present} drawn={names} />
      <CurveTable curves={curves} names={names} />
    </>
  );
}

function wholeSpan({ atMs }: DayCurves): TimeWindow {
  const fromMs = atMs[0] ?? 0;
  return { fromMs, toMs: Math.max(fromMs + 60_000, atMs.at(-1) ?? 0) };
}
