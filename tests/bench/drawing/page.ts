import { Chart, LinearScale, LineController, LineElement, PointElement, Tooltip } from 'chart.js';
import { thinCurves } from '../../../desktop/host/downsample.ts';
import { chartOptions } from '../../../desktop/ui/charts/chart-options.ts';
import { datasetsOf, type TimeDataset } from '../../../desktop/ui/charts/datasets.ts';
import type { SeriesName } from '../../../desktop/ui/charts/series.ts';
import type { DayCurves } from '../../../shared-types/log.ts';

Chart.register(LineController, LineElement, PointElement, LinearScale, Tooltip);

const names = [
  'panOutletC',
  'panSheetC',
  'panInletC',
  'storeTopC',
  'storeBottomC',
  'ambientC',
  'irradianceWM2',
  'flowLMin',
] as const satisfies readonly SeriesName[];
const samples = 8640;
const fromMs = Date.UTC(2031, 5, 21);
const span = { fromMs, toMs: fromMs + 86_400_000 };
const look = { units: { temperature: 'C', heat: 'kWh' }, timeZone: 'Etc/UTC', scheme: 'light' } as const;

/** A day at 10 s whose curves wander as measured ones do. */
function day(): DayCurves {
  const atMs = Array.from({ length: samples }, (_, index) => fromMs + index * 10_000);
  const curve = (number: number) =>
    atMs.map((_, index) => 20 + number * 5 + 10 * Math.sin(index / 900) + Math.sin(index * (number + 1.7)));
  return {
    day: '2031-06-21',
    atMs,
    series: Object.fromEntries(names.map((name, number) => [name, curve(number)])),
    pumpFraction: atMs.map(() => 0),
    heatTodayJ: atMs.map(() => 0),
    phases: [],
    events: [],
  };
}

type Drawn = Chart<'line', TimeDataset['data']>;

/** Time to make one chart and draw it [ms]. */
function timed(make: (canvas: HTMLCanvasElement) => Drawn): number {
  const box = document.createElement('div');
  box.style.cssText = 'width:1100px;height:420px';
  const canvas = box.appendChild(document.createElement('canvas'));
  document.body.append(box);
  const startMs = performance.now();
  const chart = make(canvas);
  const tookMs = performance.now() - startMs;
  chart.destroy();
  box.remove();
  return tookMs;
}

/** As the day's screen draws it: curves that the host has thinned become points. */
function ours(curves: DayCurves, canvas: HTMLCanvasElement): Drawn {
  const datasets = datasetsOf(curves, names, look.units, look.scheme);
  const options = chartOptions({ curves, datasets, look, span, moved: () => undefined });
  return new Chart<'line', TimeDataset['data']>(canvas, { type: 'line', data: { datasets }, options });
}

/** The chart library by itself on points, told what it needs to be quick. */
function plain(datasets: readonly TimeDataset[], canvas: HTMLCanvasElement): Drawn {
  return new Chart<'line', TimeDataset['data']>(canvas, {
    type: 'line',
    data: { datasets: datasets.map(({ series, data }) => ({ series, data, label: series, pointRadius: 0 })) },
    options: {
      animation: false,
      normalized: true,
      parsing: false,
      maintainAspectRatio: false,
      scales: { x: { type: 'linear', min: span.fromMs, max: span.toMs } },
    },
  });
}

interface Taken {
  readonly ours: number[];
  readonly plainOfAll: number[];
  readonly plainOfSame: number[];
}

/** Draws every way in turn, so that a busy machine slows all alike; times of each [ms]. */
function draw(times: number): Taken {
  const whole = day();
  const thinned = thinCurves(whole);
  const pointsOf = (curves: DayCurves) => datasetsOf(curves, names, look.units, look.scheme);
  const [all, same] = [pointsOf(whole), pointsOf(thinned)];
  const taken: Taken = { ours: [], plainOfAll: [], plainOfSame: [] };
  for (let round = 0; round < times; round++) {
    taken.plainOfAll.push(timed((canvas) => plain(all, canvas)));
    taken.ours.push(timed((canvas) => ours(thinned, canvas)));
    taken.plainOfSame.push(timed((canvas) => plain(same, canvas)));
  }
  return taken;
}

Object.assign(globalThis, { draw });
