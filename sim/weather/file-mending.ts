import type { FileSeries } from './file-series.ts';
import type { Repairs } from './repairs.ts';
import type { FileQuantity, RepairKind, WeatherFault } from './weather-file.ts';

const hourMs = 3_600_000;

/** The longest hole that a straight line may cross [h]; a design choice. */
const longestGapH = 6;

/** Light that a file may have with the sun down, or above what space offers: twilight, a clock of minutes [W/m2]. */
const lightMarginWM2 = 20;

/** Bounds of belief, those of the EPW data dictionary where it has any. */
const bounds: Partial<Record<FileQuantity, readonly [least: number, most: number]>> = {
  airC: [-70, 70],
  dewPointC: [-70, 70],
  humidityFraction: [0, 1.1],
  windMs: [0, 60],
  longWaveWM2: [50, 700],
  cloudFraction: [0, 1],
  sunshineH: [0, 24],
  rainMm: [0, 500],
  snowMm: [0, 500],
};

/** Takes out what cannot be, counted: values out of bounds become missing, light is held to what space offers. */
export function clipValues(series: FileSeries, spaceWM2: Float64Array, repairs: Repairs): void {
  for (const [quantity, [least, most]] of Object.entries(bounds)) {
    const column = series.columns[quantity as FileQuantity];
    replace(series, column, repairs, 'out-of-range', (value) =>
      value < least || value > most ? Number.NaN : value,
    );
  }
  replace(series, series.columns.humidityFraction, repairs, 'damper-than-saturated', (value) =>
    Math.min(value, 1),
  );
  for (const quantity of ['irradianceWM2', 'directNormalWM2', 'diffuseWM2'] as const)
    replace(series, series.columns[quantity], repairs, 'negative-radiation', (value) => Math.max(value, 0));
  replace(series, series.columns.irradianceWM2, repairs, 'sun-at-night', (value, i) =>
    spaceWM2[i] === 0 && value > lightMarginWM2 ? 0 : value,
  );
  replace(series, series.columns.irradianceWM2, repairs, 'brighter-than-space', (value, i) => {
    const most = spaceWM2[i] as number;
    return value > most + lightMarginWM2 ? most : value;
  });
}

function replace(
  series: FileSeries,
  column: Float64Array | undefined,
  repairs: Repairs,
  what: RepairKind,
  mended: (value: number, index: number) => number,
): void {
  column?.forEach((value, i) => {
    const better = mended(value, i);
    if (Object.is(better, value) || Number.isNaN(value)) return;
    column[i] = better;
    repairs.note(what, series.lines[i] ?? 1);
  });
}

/**
 * Fills holes of up to six hours by a straight line, counted. Light is filled by the clearness around the hole.
 *
 * @returns The first hole of each quantity that is too long.
 */
export function fillGaps(
  series: FileSeries,
  spaceWM2: Float64Array,
  quantities: readonly FileQuantity[],
  repairs: Repairs,
): readonly WeatherFault[] {
  const faults: WeatherFault[] = [];
  for (const quantity of quantities) {
    const column = series.columns[quantity];
    if (column === undefined) continue;
    const scale = quantity === 'irradianceWM2' ? spaceWM2 : undefined;
    const fault = fillColumn(series, quantity, column, scale, repairs);
    if (fault !== undefined) faults.push(fault);
  }
  return faults;
}

function fillColumn(
  series: FileSeries,
  quantity: FileQuantity,
  column: Float64Array,
  scale: Float64Array | undefined,
  repairs: Repairs,
): WeatherFault | undefined {
  if (column.every(Number.isNaN)) return { cause: 'nothing-in-column', quantity };
  const { stepMs, lines } = series;
  for (let from = 0; from < column.length; from++) {
    if (!Number.isNaN(column[from])) continue;
    let to = from;
    while (to < column.length && Number.isNaN(column[to])) to++;
    const hours = ((to - from) * stepMs) / hourMs;
    const line = lines[from] ?? 1;
    if (hours > longestGapH) return { cause: 'gap-too-long', line, hours, quantity };
    bridge(column, from, to, scale);
    repairs.note('value-missing', line, to - from);
    from = to;
  }
  return undefined;
}

/** Joins the values at the two sides of a hole; at an end of the file the one side goes on. */
function bridge(column: Float64Array, from: number, to: number, scale: Float64Array | undefined): void {
  const shareAt = (index: number) => {
    const value = column[index];
    if (value === undefined || scale === undefined) return value;
    const most = scale[index] as number;
    return most > lightMarginWM2 ? Math.min(1, value / most) : undefined;
  };
  const left = shareAt(from - 1) ?? shareAt(to) ?? 0.5;
  const right = shareAt(to) ?? left;
  for (let i = from; i < to; i++) {
    const share = left + ((right - left) * (i - from + 1)) / (to - from + 1);
    column[i] = scale === undefined ? share : share * (scale[i] as number);
  }
}
