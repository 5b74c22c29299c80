import styles from './chart.module.css';

interface Props {
  readonly x: number;
  readonly y: number;
  /** Across [px]. */
  readonly size: number;
  readonly reference: boolean;
  /** Shown to whoever points at it. */
  readonly title?: string;
}

/** A day: an open square in the reference, else a full dot. */
export function DayMark({ x, y, size, reference, title }: Props) {
  const half = size / 2;
  const told = title === undefined ? null : <title>{title}</title>;
  return reference ? (
    <rect className={styles['reference']} x={x - half} y={y - half} width={size} height={size}>
      {told}
    </rect>
  ) : (
    <circle className={styles['day']} cx={x} cy={y} r={half}>
      {told}
    </circle>
  );
}
