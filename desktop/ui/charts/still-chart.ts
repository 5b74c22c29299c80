import type { DayCurves } from '../../../shared-types/log.ts';
import { Chart, type TimeChart } from './chart-library.ts';
import { type ChartLook, chartInks, type TimeWindow } from './chart-look.ts';
import { chartOptions } from './chart-options.ts';
import { datasetsOf } from './datasets.ts';
import { marksOf } from './marks.ts';
import { marksPlugin, setMarks } from './marks-plugin.ts';
import type { SeriesName } from './series.ts';

/** Points of the drawing to a point of its size: paper and pictures are looked at closely. */
export const stillPixelRatio = 2;

export interface StillChart {
  readonly curves: DayCurves;
  readonly names: readonly SeriesName[];
  readonly look: ChartLook;
  readonly span: TimeWindow;
}

/**
 * Draws curves on a canvas once, at the size that the canvas has; it does not follow the page.
 *
 * @returns a function that wipes the canvas and lets go of it.
 */
export function drawStill(canvas: HTMLCanvasElement, { curves, names, look, span }: StillChart): () => void {
  const datasets = datasetsOf(curves, names, look.units, look.scheme);
  const options = chartOptions({ curves, datasets, look, span, moved: () => undefined });
  const chart: TimeChart = new Chart(canvas, {
    type: 'line',
    data: { datasets },
    options: { ...options, responsive: false, devicePixelRatio: stillPixelRatio, events: [] },
    plugins: [marksPlugin],
  });
  setMarks(chart, { marks: marksOf(curves.events), ink: chartInks[look.scheme].text });
  chart.draw();
  return () => chart.destroy();
}
