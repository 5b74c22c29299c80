import type { ChartOptions, ScaleOptionsByType } from 'chart.js';
import type { DayCurves } from '../../../shared-types/log.ts';
import { numberFormats } from '../format/numbers.ts';
import { seriesText } from '../format/series-value.ts';
import { timeFormats } from '../format/times.ts';
import { bandAxes } from './band-axes.ts';
import { type ChartLook, chartInks, type TimeWindow } from './chart-look.ts';
import type { TimeDataset } from './datasets.ts';
import { seriesValues } from './series.ts';
import { ticksOn, zoneOffset } from './time-ticks.ts';

export interface ChartPlan {
  readonly curves: DayCurves;
  readonly datasets: readonly TimeDataset[];
  readonly look: ChartLook;
  readonly span: TimeWindow;
  /** Told when a person zoomed or moved along the time axis. */
  readonly moved: () => void;
  /** Told which instant is pointed at; the box with the values there is then left out. */
  readonly pointed?: ((atMs: number) => void) | undefined;
}

/** Options of a chart whose bands stand above each other over one time axis in the site's zone. */
export function chartOptions({
  curves,
  datasets,
  look,
  span,
  moved,
  pointed,
}: ChartPlan): ChartOptions<'line'> {
  return {
    animation: false,
    normalized: true,
    parsing: false,
    responsive: true,
    maintainAspectRatio: false,
    ...(pointed === undefined ? {} : { onHover: pointAt(pointed) }),
    interaction: { mode: 'index', intersect: false, axis: 'x' },
    layout: { padding: { top: 4 } },
    scales: {
      x: timeAxis(look, span),
      ...bandAxes(datasets, look),
    },
    plugins: {
      legend: { display: false },
      tooltip: { enabled: pointed === undefined, ...tooltip(curves, look) },
      zoom: {
        limits: { x: { min: span.fromMs, max: span.toMs, minRange: 600_000 } },
        pan: { enabled: true, mode: 'x', threshold: 6, onPan: moved },
        // A wheel alone scrolls the page.
        zoom: {
          mode: 'x',
          onZoom: moved,
          wheel: { enabled: true, modifierKey: 'ctrl' },
          pinch: { enabled: true },
          // A plain drag moves the curves; with Shift it marks what is to fill the chart.
          drag: { enabled: true, modifierKey: 'shift' },
        },
      },
    },
  };
}

function pointAt(pointed: (atMs: number) => void): NonNullable<ChartOptions<'line'>['onHover']> {
  return ({ x }, _elements, chart) => {
    const atMs = x === null ? undefined : chart.scales['x']?.getValueForPixel(x);
    if (atMs !== undefined) pointed(atMs);
  };
}

function timeAxis({ timeZone, scheme }: ChartLook, span: TimeWindow) {
  const { clock } = timeFormats(timeZone);
  const offset = zoneOffset(timeZone);
  const { text, grid } = chartInks[scheme];
  return {
    type: 'linear',
    min: span.fromMs,
    max: span.toMs,
    afterBuildTicks: (axis) => {
      axis.ticks = ticksOn(axis, offset).map((value) => ({ value }));
    },
    ticks: { color: text, maxRotation: 0, autoSkip: false, callback: (value) => clock(Number(value)) },
    grid: { color: grid },
    border: { color: grid },
  } satisfies DeepPartialScale;
}

type DeepPartialScale = NonNullable<NonNullable<ChartOptions<'line'>['scales']>[string]> &
  Partial<Pick<ScaleOptionsByType<'linear'>, 'afterBuildTicks'>>;

function tooltip(curves: DayCurves, { units, timeZone, scheme }: ChartLook) {
  const formats = numberFormats(units);
  const { clockWithSeconds } = timeFormats(timeZone);
  return {
    backgroundColor: chartInks[scheme].tooltip,
    callbacks: {
      title: (items: readonly { dataIndex: number }[]) =>
        items.slice(0, 1).map((item) => clockWithSeconds(curves.atMs[item.dataIndex] ?? 0)),
      label: (item: { dataIndex: number; dataset: object }) => {
        const { series, label } = item.dataset as TimeDataset;
        const value = seriesValues(curves, series)?.[item.dataIndex] ?? null;
        return value === null ? '' : `${label}: ${seriesText(series, value, formats)}`;
      },
    },
  };
}
