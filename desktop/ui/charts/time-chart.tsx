import { Button } from '@mantine/core';
import { useRef } from 'react';
import type { DayCurves } from '../../../shared-types/log.ts';
import { useChartLook } from '../shell/use-formats.ts';
import { en } from '../text/en.ts';
import type { TimeWindow } from './chart-look.ts';
import { bands, type SeriesName, seriesLooks } from './series.ts';
import styles from './time-chart.module.css';
import { type TimeChartHandle, useTimeChart } from './use-time-chart.ts';

interface Props {
  readonly curves: DayCurves;
  readonly names: readonly SeriesName[];
  readonly span: TimeWindow;
  readonly label: string;
  readonly zoomable?: boolean;
  readonly cursorMs?: number | undefined;
  readonly onWindow: (window: TimeWindow) => void;
  readonly onPoint?: ((atMs: number) => void) | undefined;
}

const temperaturePx = 230;
const bandPx = 84;
const axisPx = 34;

/** Curves over time. What it shows stands in a table as well, which the label points to. */
export default function TimeChart({
  curves,
  names,
  span,
  label,
  zoomable = false,
  cursorMs,
  onWindow,
  onPoint,
}: Props) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const look = useChartLook();
  const handle = useTimeChart(canvas, { curves, names, look, span, cursorMs, onWindow, onPoint });
  const shown = bands.filter((band) => names.some((name) => seriesLooks[name].band === band));
  const heights = shown.map((band) => (band === 'temperature' ? temperaturePx : bandPx));
  const height = heights.reduce((sum, one) => sum + one, axisPx);
  return (
    <div>
      {zoomable ? <ZoomButtons handle={handle} /> : null}
      <div className={styles['frame']} style={{ height }}>
        <canvas ref={canvas} role="img" aria-label={label} className={styles['canvas']} />
      </div>
    </div>
  );
}

/** Every drag and pinch has a button that does the same (WCAG 2.5.7). */
function ZoomButtons({ handle }: { readonly handle: TimeChartHandle }) {
  const text = en.charts;
  return (
    <div className={styles['buttons']}>
      <Button size="xs" variant="default" onClick={() => handle.zoomBy(1.6)}>
        {text.zoomIn}
      </Button>
      <Button size="xs" variant="default" onClick={() => handle.zoomBy(1 / 1.6)}>
        {text.zoomOut}
      </Button>
      <Button size="xs" variant="default" onClick={() => handle.panBy(0.4)}>
        {text.earlier}
      </Button>
      <Button size="xs" variant="default" onClick={() => handle.panBy(-0.4)}>
        {text.later}
      </Button>
      <Button size="xs" variant="default" onClick={() => handle.reset()}>
        {text.whole}
      </Button>
      <span className={styles['hint']}>{text.zoomHint}</span>
    </div>
  );
}
