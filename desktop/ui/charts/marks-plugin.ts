import type { Chart, Plugin } from 'chart.js';
import { type ChartMark, markShapes } from './marks.ts';

interface Marks {
  readonly marks: readonly ChartMark[];
  readonly ink: string;
}

const known = new WeakMap<Chart, Marks>();

/** Shapes over the curves where something happened; drawn with the next drawing of the chart. */
export function setMarks(chart: Chart, marks: Marks): void {
  known.set(chart, marks);
}

export const marksPlugin: Plugin<'line'> = {
  id: 'marks',
  afterDraw(chart) {
    const found = known.get(chart);
    const scale = chart.scales['x'];
    if (found === undefined || scale === undefined) return;
    const { ctx, chartArea } = chart;
    ctx.save();
    ctx.fillStyle = found.ink;
    ctx.strokeStyle = found.ink;
    ctx.font = '12px sans-serif';
    ctx.textAlign = 'center';
    ctx.textBaseline = 'top';
    ctx.setLineDash([2, 4]);
    for (const { atMs, kind } of found.marks) {
      if (atMs < scale.min || atMs > scale.max) continue;
      const x = scale.getPixelForValue(atMs);
      ctx.fillText(markShapes[kind], x, chartArea.top);
      ctx.beginPath();
      ctx.moveTo(x, chartArea.top + 14);
      ctx.lineTo(x, chartArea.bottom);
      ctx.stroke();
    }
    ctx.restore();
  },
};
