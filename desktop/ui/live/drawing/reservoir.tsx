import { waterColour } from '../../charts/temperature-scale.ts';
import { selectWater } from '../../store/decision-selectors.ts';
import { selectReading } from '../../store/live-selectors.ts';
import { type LiveState, useLive } from '../../store/live-store.ts';
import type { Box } from '../elevation.ts';
import { reservoirFill } from '../elevation-parts.ts';
import styles from './drawing.module.css';

const selectColour = (state: LiveState): string => {
  const reading = selectReading('reservoirC')(state);
  return reading === undefined || reading.quality === 'failed'
    ? 'var(--part-soft)'
    : waterColour(reading.value);
};

/** The drain-back reservoir with the heat exchanger in it. Without a usable sensor its water has no colour. */
export function Reservoir({ box }: { readonly box: Box }) {
  const pan = useLive(selectWater);
  const colour = useLive(selectColour);
  const { left, right, top, bottom } = box;
  const [width, height] = [right - left, bottom - top];
  const waterTop = bottom - height * reservoirFill(pan);
  return (
    <g>
      <rect x={left} y={top} width={width} height={height} className={styles['tankBack']} rx="3" />
      <rect
        x={left}
        y={waterTop}
        width={width}
        height={bottom - waterTop}
        fill={colour}
        className={styles['tankWater']}
      />
      <path d={coil(box)} className={styles['coilEdge']} />
      <path d={coil(box)} className={styles['coil']} />
      <rect x={left} y={top} width={width} height={height} className={styles['tank']} rx="3" />
    </g>
  );
}

/** Turns of a tube across the lower part of the vessel. */
function coil({ left, right, top, bottom }: Box): string {
  const turns = 4;
  const [from, to] = [left + 0.2 * (right - left), right - 0.2 * (right - left)];
  const y = (turn: number) => bottom - (0.25 + (0.35 * turn) / turns) * (bottom - top);
  const lines = Array.from({ length: turns }, (_, turn) =>
    turn % 2 === 0 ? `H${to}V${y(turn + 1)}` : `H${from}V${y(turn + 1)}`,
  );
  return `M${from} ${y(0)}${lines.join('')}`;
}
