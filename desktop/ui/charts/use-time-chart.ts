import { type RefObject, useEffect, useMemo, useRef } from 'react';
import type { DayCurves } from '../../../shared-types/log.ts';
import { Chart, type TimeChart } from './chart-library.ts';
import { type ChartLook, chartInks, type TimeWindow } from './chart-look.ts';
import { chartOptions } from './chart-options.ts';
import { cursorPlugin, setCursor } from './cursor-plugin.ts';
import { datasetsOf } from './datasets.ts';
import { marksOf } from './marks.ts';
import { marksPlugin, setMarks } from './marks-plugin.ts';
import type { SeriesName } from './series.ts';

export interface TimeChartHandle {
  zoomBy(factor: number): void;
  /** Moves the window by a share of its length; positive shows what was earlier. */
  panBy(share: number): void;
  reset(): void;
}

interface Options {
  readonly curves: DayCurves;
  readonly names: readonly SeriesName[];
  readonly look: ChartLook;
  readonly span: TimeWindow;
  readonly cursorMs: number | undefined;
  readonly onWindow: (window: TimeWindow) => void;
  /** Told which instant is pointed at; without it a small box shows the values there. */
  readonly onPoint?: ((atMs: number) => void) | undefined;
}

/** Draws curves on a canvas and keeps the drawing up to date; a zoom outlives a change of the curves shown. */
export function useTimeChart(canvas: RefObject<HTMLCanvasElement | null>, options: Options): TimeChartHandle {
  const { curves, names, look, span, cursorMs, onWindow, onPoint } = options;
  const chart = useRef<TimeChart | null>(null);
  /** Where a person zoomed to; undefined shows the whole span. */
  const zoomed = useRef<TimeWindow | undefined>(undefined);

  useEffect(() => {
    if (canvas.current === null) return;
    const made: TimeChart = new Chart(canvas.current, {
      type: 'line',
      data: { datasets: [] },
      plugins: [marksPlugin, cursorPlugin],
    });
    chart.current = made;
    return () => {
      chart.current = null;
      made.destroy();
    };
  }, [canvas]);

  // biome-ignore lint/correctness/useExhaustiveDependencies: another span has no use for the old zoom
  useEffect(() => {
    zoomed.current = undefined;
  }, [span]);

  useEffect(() => {
    const made = chart.current;
    if (made === null) return;
    const datasets = datasetsOf(curves, names, look.units, look.scheme);
    const moved = () => {
      zoomed.current = windowOf(made) ?? span;
      onWindow(zoomed.current);
    };
    made.data.datasets = datasets;
    made.options = chartOptions({ curves, datasets, look, span, moved, pointed: onPoint });
    setMarks(made, { marks: marksOf(curves.events), ink: chartInks[look.scheme].text });
    show(made, zoomed.current ?? span);
    onWindow(zoomed.current ?? span);
  }, [curves, names, look, span, onWindow, onPoint]);

  useEffect(() => {
    if (chart.current !== null) setCursor(chart.current, cursorMs);
  }, [cursorMs]);

  return useMemo(
    () => ({
      zoomBy: (factor) => chart.current?.zoom({ x: factor }, 'none'),
      panBy: (share) => chart.current?.pan({ x: share * chart.current.chartArea.width }, undefined, 'none'),
      reset() {
        zoomed.current = undefined;
        if (chart.current !== null) show(chart.current, span);
        onWindow(span);
      },
    }),
    [span, onWindow],
  );
}

function show(chart: TimeChart, { fromMs, toMs }: TimeWindow): void {
  const axis = chart.options.scales?.['x'];
  if (axis !== undefined) Object.assign(axis, { min: fromMs, max: toMs });
  chart.update('none');
}

function windowOf(chart: TimeChart): TimeWindow | undefined {
  const scale = chart.scales['x'];
  return scale === undefined ? undefined : { fromMs: scale.min, toMs: scale.max };
}
