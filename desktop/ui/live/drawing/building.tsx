import type { Elevation } from '../elevation.ts';
import styles from './drawing.module.css';

/** What carries the pan, and the ground. */
export function Building({ elevation }: { readonly elevation: Elevation }) {
  const { roof, groundY, width, onRoof } = elevation;
  return (
    <g>
      {onRoof ? (
        <rect
          x={roof.left + 12}
          y={roof.bottom}
          width={roof.right - roof.left - 24}
          height={groundY - roof.bottom}
          className={styles['inside']}
        />
      ) : null}
      <rect
        x={roof.left}
        y={roof.top}
        width={roof.right - roof.left}
        height={Math.max(0, roof.bottom - roof.top)}
        className={styles['slab']}
      />
      <path d={`M0 ${groundY}H${width}`} className={styles['ground']} />
    </g>
  );
}
