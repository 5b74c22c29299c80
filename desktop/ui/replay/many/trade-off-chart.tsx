import { useElementSize } from '@mantine/hooks';
import { type KeyboardEvent, useRef, useState } from 'react';
import type { SweepPoint } from '../../../../shared-types/tuning.ts';
import { en } from '../../text/en.ts';
import { ChartFrame, chartPlane } from './chart-frame.tsx';
import { MarkShape } from './mark-shape.tsx';
import { type Cost, markByKey, type Plotted, roomFor } from './trade-off.ts';
import styles from './trade-off-chart.module.css';

const text = en.tuning.many;

interface Props {
  readonly marks: readonly Plotted[];
  readonly cost: Cost;
  readonly units: { readonly heat: string; readonly cost: string };
  readonly chosen: number | null;
  readonly advised: number | null;
  readonly labelOf: (point: SweepPoint) => string;
  readonly onChoose: (index: number) => void;
}

/** Width below which the drawing shrinks instead. */
const leastPx = 240;

/** Heat against what it costs. One stop of the Tab key, arrow keys from mark to mark, Enter chooses. */
export function TradeOffChart({ marks, cost, units, chosen, advised, labelOf, onChoose }: Props) {
  const [place, setPlace] = useState(0);
  const options = useRef<(SVGGElement | null)[]>([]);
  const { ref, width } = useElementSize();
  const plane = chartPlane(
    Math.max(leastPx, width),
    roomFor(marks.map(({ x }) => x)),
    // Nought stands for the settings in force.
    roomFor([0, ...marks.map(({ y }) => y)]),
  );
  const at = Math.min(place, marks.length - 1);
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault();
      const index = marks[at]?.index;
      if (index !== undefined) onChoose(index);
      return;
    }
    const next = markByKey(at, marks.length, event.key);
    if (next === undefined) return;
    event.preventDefault();
    setPlace(next);
    options.current[next]?.focus();
  };
  const axis = text.axes[cost];
  return (
    <div ref={ref}>
      <svg viewBox={`0 0 ${plane.width} ${plane.height}`} className={styles['chart']}>
        <title>{text.chart}</title>
        <ChartFrame
          plane={plane}
          counted={cost !== 'electricityJ'}
          xTitle={text.axisTitle(axis, units.cost)}
          yTitle={text.heatAxis(units.heat)}
        />
        <g role="listbox" aria-label={text.chartLabel(axis)} onKeyDown={onKeyDown}>
          {marks.map(({ index, point, x, y, low, high }, own) => (
            <g
              key={index}
              ref={(one) => {
                options.current[own] = one;
              }}
              role="option"
              tabIndex={own === at ? 0 : -1}
              aria-selected={index === chosen}
              aria-label={labelOf(point)}
              className={styles['mark']}
              transform={`translate(${plane.x(x)} ${plane.y(y)})`}
              onFocus={() => setPlace(own)}
              onClick={() => onChoose(index)}
            >
              <title>{labelOf(point)}</title>
              {/* The least size of what is pointed at (WCAG 2.5.8). */}
              <circle r={12} className={styles['target']} />
              {index === chosen ? (
                <path
                  d={`M0 ${plane.y(low) - plane.y(y)}V${plane.y(high) - plane.y(y)}`}
                  className={styles['band']}
                />
              ) : null}
              <MarkShape
                front={point.onFront}
                inForce={index === 0}
                advised={index === advised}
                chosen={index === chosen}
              />
            </g>
          ))}
        </g>
      </svg>
    </div>
  );
}
