import styles from './trade-off-chart.module.css';

interface Props {
  readonly front: boolean;
  readonly inForce: boolean;
  readonly advised: boolean;
  readonly chosen: boolean;
}

/** A mark of the trade-off: its shape tells what it is, colour only underlines it. */
export function MarkShape({ front, inForce, advised, chosen }: Props) {
  return (
    <>
      {chosen ? <circle r={11} className={styles['chosen']} /> : null}
      {advised ? <path d="M-21 -4l7 4l-7 4z" className={styles['advised']} /> : null}
      {inForce ? <rect x={-5.5} y={-5.5} width={11} height={11} className={styles['inForce']} /> : null}
      {!inForce && front ? <path d="M0 -7.5L7.5 0L0 7.5L-7.5 0Z" className={styles['front']} /> : null}
      {inForce || front ? null : <circle r={4.5} className={styles['other']} />}
    </>
  );
}
