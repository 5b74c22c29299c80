import { useCallback, useMemo, useState } from 'react';
import type { DayCurves } from '../../../shared-types/log.ts';
import { Late } from '../late-part.tsx';
import { nearestIndex } from '../replay/scrub.ts';
import type { TimeWindow } from './chart-look.ts';
import { CurveTable } from './curve-table.tsx';
import { lateTimeChart } from './late-time-chart.ts';
import { MarkKey } from './mark-key.tsx';
import { mergedPhases } from './merged-phases.ts';
import { PhaseRibbon, RibbonKey } from './phase-ribbon.tsx';
import { SeriesSwitches } from './series-switches.tsx';
import { useDrawnSeries } from './use-drawn-series.ts';
import { ValuesLine } from './values-line.tsx';
import { wholeSpan } from './whole-span.ts';

interface Props {
  readonly curves: DayCurves;
  readonly label: string;
  readonly zoomable?: boolean;
  readonly cursorMs?: number | undefined;
  /** Shows the values at an instant that pointer and keyboard move. */
  readonly pointable?: boolean;
}

/** Curves with their switches, the ribbon of phases below them, and the same as a table. */
export function CurvePanel({ curves, label, zoomable = false, cursorMs, pointable = false }: Props) {
  const { present, names } = useDrawnSeries(curves);
  const phases = useMemo(() => mergedPhases(curves.phases), [curves]);
  const span = useMemo(() => wholeSpan(curves), [curves]);
  const [index, setIndex] = useState(() => (curves.atMs.length - 1) >> 1);
  const onPoint = useCallback((atMs: number) => setIndex(nearestIndex(curves.atMs, atMs)), [curves]);
  const [zoomed, setZoomed] = useState<TimeWindow>(span);
  const onWindow = useCallback((window: TimeWindow) => setZoomed(window), []);
  return (
    <>
      <Late
        part={lateTimeChart}
        props={{
          ...{ curves, names, span, label, zoomable, onWindow },
          cursorMs: pointable ? curves.atMs[index] : cursorMs,
          onPoint: pointable ? onPoint : undefined,
        }}
      />
      <PhaseRibbon phases={phases} window={zoomed} />
      {pointable ? <ValuesLine {...{ curves, names, index }} onIndex={setIndex} /> : null}
      <RibbonKey phases={phases}>
        <MarkKey events={curves.events} />
      </RibbonKey>
      <SeriesSwitches present={present} drawn={names} />
      <CurveTable curves={curves} names={names} />
    </>
  );
}
