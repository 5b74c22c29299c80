import { useComputedColorScheme } from '@mantine/core';
import { useCallback, useMemo } from 'react';
import type { ChartLook } from '../charts/chart-look.ts';
import { type NumberFormats, numberFormats } from '../format/numbers.ts';
import { sentenceIn } from '../format/sentence.ts';
import { type TimeFormats, timeFormats } from '../format/times.ts';
import type { Units } from '../format/units.ts';
import { selectHeatUnit, selectTemperatureUnit, useChoices } from '../store/choices-store.ts';
import { selectTimeZone } from '../store/live-selectors.ts';
import { useLive } from '../store/live-store.ts';

function useUnits(): Units {
  const temperature = useChoices(selectTemperatureUnit);
  const heat = useChoices(selectHeatUnit);
  return useMemo(() => ({ temperature, heat }), [temperature, heat]);
}

/** Numbers in the units that were chosen. */
export function useNumbers(): NumberFormats {
  const units = useUnits();
  return useMemo(() => numberFormats(units), [units]);
}

/** Turns a sentence of the controller into one with the units that were chosen. */
export function useSentence(): (sentence: string) => string {
  const units = useUnits();
  return useCallback((sentence) => sentenceIn(units, sentence), [units]);
}

/** Times in the zone of the site that is shown. */
export function useTimes(): TimeFormats {
  const timeZone = useLive(selectTimeZone);
  return useMemo(() => timeFormats(timeZone), [timeZone]);
}

/** All that a chart's look depends on besides its curves. */
export function useChartLook(): ChartLook {
  const units = useUnits();
  const timeZone = useLive(selectTimeZone);
  const scheme = useComputedColorScheme('light', { getInitialValueInEffect: false });
  return useMemo(() => ({ units, timeZone, scheme }), [units, timeZone, scheme]);
}
