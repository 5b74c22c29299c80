import type { Chart, Plugin } from 'chart.js';

/** Instant that each chart marks [UTC ms]. */
const cursors = new WeakMap<Chart, number>();

/** Marks an instant with an upright line; it costs a drawing, not a new layout. */
export function setCursor(chart: Chart, atMs: number | undefined): void {
  if (atMs === undefined) cursors.delete(chart);
  else cursors.set(chart, atMs);
  chart.draw();
}

export const cursorPlugin: Plugin<'line'> = {
  id: 'cursor',
  afterDraw(chart) {
    const atMs = cursors.get(chart);
    const scale = chart.scales['x'];
    if (atMs === undefined || scale === undefined || atMs < scale.min || atMs > scale.max) return;
    const { ctx, chartArea } = chart;
    const x = scale.getPixelForValue(atMs);
    ctx.save();
    ctx.strokeStyle = getComputedStyle(chart.canvas).color;
    ctx.lineWidth = 1.5;
    ctx.beginPath();
    ctx.moveTo(x, chartArea.top);
    ctx.lineTo(x, chartArea.bottom);
    ctx.stroke();
    ctx.restore();
  },
};
