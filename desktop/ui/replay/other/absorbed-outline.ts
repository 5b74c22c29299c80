import type { Absorbed } from '../../../../shared-types/absorbed.ts';

export interface DrawnBox {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** A day of light as points of a drawing. */
export interface Outline {
  /** Corners of the band and points of the line, as SVG writes them. */
  readonly band: string;
  readonly line: string;
  /** The upper end of the scale [W/m2]: whole hundreds. */
  readonly topWM2: number;
  readonly brightest: { readonly atMs: number; readonly valueWM2: number };
  /** Instants that are named below it. */
  readonly hours: readonly { readonly atMs: number; readonly x: number }[];
}

const namedMs = 6 * 3_600_000;

/** Each step stands in its middle. */
export function absorbedOutline(absorbed: Absorbed, box: DrawnBox): Outline {
  const { fromMs, stepMs, valueWM2, lowWM2, highWM2 } = absorbed;
  const spanMs = valueWM2.length * stepMs;
  const topWM2 = 100 * Math.max(1, Math.ceil(Math.max(...highWM2) / 100));
  const x = (atMs: number) => box.left + ((atMs - fromMs) / spanMs) * box.width;
  const middleMs = (step: number) => fromMs + (step + 0.5) * stepMs;
  const point = (value: number, step: number) => {
    const y = box.top + (1 - value / topWM2) * box.height;
    return `${x(middleMs(step)).toFixed(1)},${y.toFixed(1)}`;
  };
  const brightest = valueWM2.indexOf(Math.max(...valueWM2));
  return {
    band: [...highWM2.map(point), ...lowWM2.map(point).toReversed()].join(' '),
    line: valueWM2.map(point).join(' '),
    topWM2,
    brightest: { atMs: middleMs(brightest), valueWM2: valueWM2[brightest] as number },
    hours: Array.from({ length: Math.floor((spanMs - namedMs / 2) / namedMs) }, (_, index) => {
      const atMs = fromMs + (index + 1) * namedMs;
      return { atMs, x: x(atMs) };
    }),
  };
}
