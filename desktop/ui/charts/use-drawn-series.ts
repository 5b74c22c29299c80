import { useMemo } from 'react';
import type { DayCurves } from '../../../shared-types/log.ts';
import { selectHiddenSeries, selectShownSeries, useChoices } from '../store/choices-store.ts';
import { drawnSeries, presentSeries, type SeriesName } from './series.ts';

/** Curves that there are, and those of them that a person wants to see. */
export function useDrawnSeries(curves: DayCurves): {
  readonly present: readonly SeriesName[];
  readonly names: readonly SeriesName[];
} {
  const hidden = useChoices(selectHiddenSeries);
  const shown = useChoices(selectShownSeries);
  const present = useMemo(() => presentSeries(curves), [curves]);
  const names = useMemo(() => drawnSeries(present, hidden, shown), [present, hidden, shown]);
  return { present, names };
}
