import { useId } from 'react';
import { useShallow } from 'zustand/react/shallow';
import type { Channel } from '../../../../shared-types/channels.ts';
import type { Site } from '../../../../shared-types/site.ts';
import { selectWater } from '../../store/decision-selectors.ts';
import { selectReading } from '../../store/live-selectors.ts';
import { type LiveState, useLive } from '../../store/live-store.ts';
import type { Elevation } from '../elevation.ts';
import { storeFill } from '../elevation-parts.ts';
import { storeLayers } from '../store-layers.ts';
import styles from './drawing.module.css';

const usable = (state: LiveState, channel: Channel): number | undefined => {
  const reading = selectReading(channel)(state);
  return reading === undefined || reading.quality === 'failed' ? undefined : reading.value;
};

const selectStoreC = (state: LiveState) =>
  [usable(state, 'storeTopC'), usable(state, 'storeMiddleC'), usable(state, 'storeBottomC')] as const;
const selectLevelMm = (state: LiveState) => usable(state, 'storeLevelMm');

/** The store with its water in layers. Without a usable sensor the water has no colour. */
export function Store({ site, elevation }: { readonly site: Site; readonly elevation: Elevation }) {
  const gradient = useId();
  const [topC, middleC, bottomC] = useLive(useShallow(selectStoreC));
  const levelMm = useLive(selectLevelMm);
  const pan = useLive(selectWater);
  const { left, right, top, bottom } = elevation.store;
  const waterTop = bottom - (bottom - top) * storeFill(site, pan, levelMm);
  const heights = [1, 0.5, 0] as const;
  const layers = storeLayers(
    [topC, middleC, bottomC].flatMap((temperatureC, index) =>
      temperatureC === undefined ? [] : [{ height: heights[index] as number, temperatureC }],
    ),
  );
  return (
    <g>
      <linearGradient id={gradient} x1="0" y1="0" x2="0" y2="1">
        {layers.map((layer) => (
          <stop key={layer.offset} offset={layer.offset} stopColor={layer.colour} />
        ))}
      </linearGradient>
      <rect
        x={left}
        y={top}
        width={right - left}
        height={bottom - top}
        className={styles['tankBack']}
        rx="3"
      />
      <rect
        x={left}
        y={waterTop}
        width={right - left}
        height={bottom - waterTop}
        fill={layers.length === 0 ? 'var(--part-soft)' : `url(#${gradient})`}
        className={styles['tankWater']}
      />
      <rect x={left} y={top} width={right - left} height={bottom - top} className={styles['tank']} rx="3" />
    </g>
  );
}
