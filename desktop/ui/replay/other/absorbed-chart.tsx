import type { Absorbed } from '../../../../shared-types/absorbed.ts';
import { inLine } from '../../format/numbers.ts';
import { useNumbers, useTimes } from '../../shell/use-formats.ts';
import { en } from '../../text/en.ts';
import styles from './absorbed-chart.module.css';
import { absorbedOutline } from './absorbed-outline.ts';

const text = en.tuning.other.absorbed;

/** Room for the drawing and for the words beside and below it, in the drawing's own units. */
const size = { width: 360, height: 160, left: 64, right: 8, top: 10, bottom: 22 } as const;
const box = {
  left: size.left,
  top: size.top,
  width: size.width - size.left - size.right,
  height: size.height - size.top - size.bottom,
} as const;

/** Light through the day: the band as an area, the likeliest as a line. */
export function AbsorbedChart({ absorbed }: { readonly absorbed: Absorbed }) {
  const numbers = useNumbers();
  const { clock } = useTimes();
  const { band, line, topWM2, brightest, hours } = absorbedOutline(absorbed, box);
  const power = (valueWM2: number) => inLine(numbers.channel('WM2', valueWM2));
  const base = box.top + box.height;
  return (
    <svg
      className={styles['chart']}
      viewBox={`0 0 ${size.width} ${size.height}`}
      role="img"
      aria-label={text.chart(clock(brightest.atMs), power(brightest.valueWM2))}
    >
      {[0, topWM2 / 2, topWM2].map((valueWM2, index) => {
        const y = base - (index / 2) * box.height;
        return (
          <g key={valueWM2}>
            <line className={styles['rule']} x1={box.left} x2={box.left + box.width} y1={y} y2={y} />
            <text className={styles['word']} x={box.left - 4} y={y + 4} textAnchor="end">
              {power(valueWM2)}
            </text>
          </g>
        );
      })}
      {hours.map(({ atMs, x }) => (
        <text key={atMs} className={styles['word']} x={x} y={base + 15} textAnchor="middle">
          {clock(atMs)}
        </text>
      ))}
      <polygon className={styles['band']} points={band} />
      <polyline className={styles['line']} points={line} />
    </svg>
  );
}
