import { useEffect, useRef } from 'react';
import type { DayCurves } from '../../../shared-types/log.ts';
import { loadPart } from '../load-part.ts';
import { useChartLook } from '../shell/use-formats.ts';
import type { SeriesName } from './series.ts';
import { wholeSpan } from './whole-span.ts';

/** A canvas that gets its curves when somebody prints, in the colours for white paper. */
export function usePrintedChart(curves: DayCurves, names: readonly SeriesName[]) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const look = useChartLook();
  useEffect(() => {
    let draw: (() => () => void) | undefined;
    let release: (() => void) | undefined;
    const onPrint = () => {
      release?.();
      release = draw?.();
    };
    // Printing waits for nobody: what draws is fetched beforehand.
    void loadPart(() => import('./still-chart.ts')).then(({ drawStill }) => {
      const paper = canvas.current;
      if (paper === null) return;
      draw = () =>
        drawStill(paper, {
          curves,
          names,
          look: { ...look, scheme: 'light' },
          span: wholeSpan(curves),
        });
    });
    window.addEventListener('beforeprint', onPrint);
    return () => {
      window.removeEventListener('beforeprint', onPrint);
      release?.();
    };
  }, [curves, names, look]);
  return canvas;
}
