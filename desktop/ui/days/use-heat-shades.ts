import { useMemo } from 'react';
import type { DaySummary } from '../../../shared-types/log.ts';
import { inkOn } from '../charts/temperature-scale.ts';
import { heatIn } from '../format/units.ts';
import { useChartLook } from '../shell/use-formats.ts';
import { heatOf } from './calendar.ts';
import { classWidth, heatClass, heatShades } from './heat-scale.ts';

/** How heat is shown as a shade. */
export interface HeatShades {
  /** Shades from little to much. */
  readonly colours: readonly string[];
  /** Heat that one shade spans, in the chosen unit. */
  readonly width: number;
  /** Shade and ink of a day's heat [J]; undefined when it brought nothing home. */
  of(heatJ: number): { readonly background: string; readonly color: string } | undefined;
}

/** Shades that stretch to the best day of all: the same shade means the same heat in every year. */
export function useHeatShades(days: readonly DaySummary[]): HeatShades {
  const { scheme, units } = useChartLook();
  return useMemo(() => {
    const colours = heatShades[scheme];
    const best = days.reduce((most, one) => Math.max(most, heatOf(one)), 0);
    const width = classWidth(heatIn(units.heat, best), colours.length);
    return {
      colours,
      width,
      of(heatJ) {
        const background = colours[heatClass(heatIn(units.heat, heatJ), width, colours.length) ?? -1];
        return background === undefined ? undefined : { background, color: inkOn(background) };
      },
    };
  }, [days, scheme, units]);
}
