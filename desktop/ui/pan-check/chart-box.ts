import { axisTicks } from '../replay/many/axis-ticks.ts';

/** Where a drawing stands within its frame [px]. */
export interface DrawnBox {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** What is left of a frame for the drawing, with room for words at its edges [px]. */
export function boxWithin(
  widthPx: number,
  heightPx: number,
  edge: { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number },
): DrawnBox {
  return {
    left: edge.left,
    top: edge.top,
    width: widthPx - edge.left - edge.right,
    height: heightPx - edge.top - edge.bottom,
  };
}

/** An upright scale with round values on it. */
export interface Scale {
  readonly levels: readonly { readonly value: number; readonly y: number }[];
  /** A value beyond the scale stands at its end. */
  readonly y: (value: number) => number;
}

/** Round values that a scale has at most. */
const mostLevels = 7;

/** @param step - Both ends are whole multiples of it; the scale is one of them high at least. */
export function scaleOf(values: readonly number[], step: number, box: DrawnBox): Scale {
  const least = Math.floor(Math.min(...values) / step + 1e-9);
  const most = Math.max(least + 1, Math.ceil(Math.max(...values) / step - 1e-9));
  const y = (value: number) => {
    const share = (value / step - least) / (most - least);
    return box.top + (1 - Math.min(1, Math.max(0, share))) * box.height;
  };
  // A step that is finer would stand beside the same word twice.
  const levels = axisTicks(least * step, most * step, mostLevels, step);
  return { levels: levels.map((value) => ({ value, y: y(value) })), y };
}
