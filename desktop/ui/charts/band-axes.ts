import { temperatureSymbols, type Units } from '../format/units.ts';
import { bandRange } from './band-range.ts';
import { type ChartLook, chartInks } from './chart-look.ts';
import type { TimeDataset } from './datasets.ts';
import { type Band, bands } from './series.ts';

/** Axes of the bands that have a curve to show, uppermost first, each in its part of the height. */
export function bandAxes(datasets: readonly TimeDataset[], look: ChartLook) {
  const shown = bands.filter((band) => datasets.some((dataset) => dataset.yAxisID === band));
  const axes = shown.map((band, index) => [
    band,
    { ...bandAxis(band, datasets, look), ...place(index, shown.length) },
  ]);
  return Object.fromEntries(axes) as Record<Band, ReturnType<typeof bandAxis>>;
}

function bandAxis(band: Band, datasets: readonly TimeDataset[], { units, scheme }: ChartLook) {
  const { text, grid } = chartInks[scheme];
  const own = datasets.filter((dataset) => dataset.yAxisID === band);
  const { min, suggestedMax } = bandRange(band, own);
  return {
    type: 'linear' as const,
    position: 'left' as const,
    stack: 'bands',
    stackWeight: band === 'temperature' ? 3 : 1,
    grace: '6%',
    ...(min === undefined ? {} : { min }),
    ...(suggestedMax === undefined ? {} : { suggestedMax }),
    title: { display: true, text: bandUnit(band, units), color: text },
    ticks: { color: text, maxTicksLimit: 7 },
    grid: { color: grid },
    border: { color: grid },
    // The same room for every chart, so that what stands below can be aligned.
    afterFit: (axis: { width: number }) => {
      axis.width = 62;
    },
  };
}

/** Where a band stands among the others. */
function place(index: number, count: number) {
  return { weight: count - index, afterBuildTicks: index === 0 ? () => undefined : endAndMiddle };
}

/** A low band has room for two labels; one at its upper end would stand on the band above it. */
function endAndMiddle(axis: { ticks: { value: number }[]; min: number; max: number }): void {
  axis.ticks = [{ value: axis.min }, { value: (axis.min + axis.max) / 2 }];
}

function bandUnit(band: Band, units: Units): string {
  const symbols: Readonly<Record<Band, string>> = {
    temperature: temperatureSymbols[units.temperature],
    radiation: 'W/m²',
    flow: 'L/min',
    pump: 'Pump %',
    heat: units.heat,
    power: 'W',
    level: 'mm',
    wind: 'm/s',
    humidity: '% RH',
  };
  return symbols[band];
}
