import styles from './chart.module.css';
import type { DrawnBox, Scale } from './chart-box.ts';

interface Props {
  readonly box: DrawnBox;
  readonly levels: Scale['levels'];
  readonly show: (value: number) => string;
}

/** Round values of an upright scale with their lines, and the lower edge of the drawing. */
export function LevelLines({ box, levels, show }: Props) {
  const right = box.left + box.width;
  return (
    <>
      <path className={styles['rule']} d={`M${box.left} ${box.top + box.height}H${right}`} />
      {levels.map(({ value, y }) => (
        <g key={value}>
          <path className={styles['rule']} d={`M${box.left} ${y}H${right}`} />
          <text x={box.left - 6} y={y} dy="0.35em" textAnchor="end">
            {show(value)}
          </text>
        </g>
      ))}
    </>
  );
}
