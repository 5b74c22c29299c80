import styles from './chart.module.css';

interface Props {
  readonly x: number;
  readonly y: number;
  /** Across [px]. */
  readonly size: number;
  readonly reference: boolean;
}

/** A day: an open square in the reference, else a full dot. */
export function DayMark({ x, y, size, reference }: Props) {
  const half = size / 2;
  return reference ? (
    <rect className={styles['reference']} x={x - half} y={y - half} width={size} height={size} />
  ) : (
    <circle className={styles['day']} cx={x} cy={y} r={half} />
  );
}
