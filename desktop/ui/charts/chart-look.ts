import type { Units } from '../format/units.ts';
import type { Scheme } from './colours.ts';

/** What a chart's look depends on besides its curves. */
export interface ChartLook {
  readonly units: Units;
  readonly timeZone: string;
  readonly scheme: Scheme;
}

/** The part of the time axis that is shown. */
export interface TimeWindow {
  readonly fromMs: number;
  readonly toMs: number;
}

/** Colours of a chart besides its curves. */
export const chartInks = {
  light: { text: '#5c5c58', grid: '#e4e4e0', tooltip: '#1d1d1b' },
  dark: { text: '#b4b4af', grid: '#333331', tooltip: '#3a3a38' },
} as const satisfies Record<Scheme, object>;
