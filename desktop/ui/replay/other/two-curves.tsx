import { useCallback, useMemo, useState } from 'react';
import type { DayCurves } from '../../../../shared-types/log.ts';
import type { Comparison } from '../../../../shared-types/tuning.ts';
import type { TimeWindow } from '../../charts/chart-look.ts';
import { lateTimeChart } from '../../charts/late-time-chart.ts';
import { mergedPhases } from '../../charts/merged-phases.ts';
import { PhaseRibbon, RibbonKey } from '../../charts/phase-ribbon.tsx';
import type { SeriesName } from '../../charts/series.ts';
import { SeriesSwitches } from '../../charts/series-switches.tsx';
import { useDrawnSeries } from '../../charts/use-drawn-series.ts';
import { wholeSpan } from '../../charts/whole-span.ts';
import { Late } from '../../late-part.tsx';
import { useTimes } from '../../shell/use-formats.ts';
import { en } from '../../text/en.ts';
import { nearestIndex } from '../scrub.ts';
import { GroundStrip } from './ground-strip.tsx';
import styles from './two-curves.module.css';
import { TwoValues } from './two-values.tsx';

const text = en.tuning.other;

/** Both sides through the day under each other, over one time axis and with one cursor. */
export function TwoCurves({ comparison }: { readonly comparison: Comparison }) {
  const { base, tried } = comparison.curves;
  const { present, names } = useDrawnSeries(base);
  const span = useMemo(() => wholeSpan(base), [base]);
  const [cursorMs, setCursorMs] = useState(() => base.atMs[(base.atMs.length - 1) >> 1] ?? 0);
  const onPoint = useCallback(
    (atMs: number) => setCursorMs(base.atMs[nearestIndex(base.atMs, atMs)] ?? 0),
    [base],
  );
  const common = { names, span, cursorMs, onPoint };
  if (base.atMs.length < 2) return <p>{en.days.noCurves}</p>;
  return (
    <>
      <Side side={text.base} curves={base} {...common} />
      <Side side={text.tried} curves={tried} {...common} />
      <GroundStrip spans={comparison.leftGround} window={span} />
      <TwoValues {...{ base, tried, names, cursorMs }} onCursor={setCursorMs} />
      <RibbonKey phases={[...base.phases, ...tried.phases]} />
      <SeriesSwitches present={present} drawn={names} />
    </>
  );
}

interface SideProps {
  readonly side: string;
  readonly curves: DayCurves;
  readonly names: readonly SeriesName[];
  readonly span: TimeWindow;
  readonly cursorMs: number;
  readonly onPoint: (atMs: number) => void;
}

/** Curves of one side with its phases below them. */
function Side({ side, curves, ...chart }: SideProps) {
  const times = useTimes();
  const [window, setWindow] = useState<TimeWindow>(chart.span);
  const onWindow = useCallback((next: TimeWindow) => setWindow(next), []);
  const phases = useMemo(() => mergedPhases(curves.phases), [curves]);
  const label = text.sideCurves(side, times.day(curves.day));
  return (
    <div className={styles['side']}>
      <h3>{side}</h3>
      <Late part={lateTimeChart} props={{ curves, label, onWindow, ...chart }} />
      <PhaseRibbon phases={phases} window={window} />
    </div>
  );
}
