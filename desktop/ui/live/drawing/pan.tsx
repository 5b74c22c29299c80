import type { Channel } from '../../../../shared-types/channels.ts';
import { waterColour } from '../../charts/temperature-scale.ts';
import { selectWater } from '../../store/decision-selectors.ts';
import { selectReading } from '../../store/live-selectors.ts';
import { type LiveState, useLive } from '../../store/live-store.ts';
import type { Elevation } from '../elevation.ts';
import { panFill } from '../elevation-parts.ts';
import { panWater } from '../pan-water.ts';
import { pathThrough } from '../pipes.ts';
import styles from './drawing.module.css';

/** Channels that tell how warm the pan's water is, best first. */
const waterChannels: readonly Channel[] = ['panOutletC', 'panSheetC', 'panInletC'];

const selectPanColour = (state: LiveState): string | undefined => {
  for (const channel of waterChannels) {
    const reading = selectReading(channel)(state);
    if (reading !== undefined && reading.quality !== 'failed') return waterColour(reading.value);
  }
  return undefined;
};

/** Liner, water and sheet. Drained, the sheet lies on the floor. */
export function Pan({ elevation }: { readonly elevation: Elevation }) {
  const water = useLive(selectWater);
  const colour = useLive(selectPanColour);
  const { pan, floorLeftY, floorRightY, surfaceY } = elevation;
  const outline = panWater(elevation, panFill[water]);
  const sheetY = water === 'empty' ? undefined : surfaceY;
  const onFloor = `M${pan.left} ${floorLeftY - 1}L${pan.right} ${floorRightY - 1}`;
  return (
    <g>
      <path
        d={`M${pan.left} ${floorLeftY}L${pan.right} ${floorRightY}V${pan.bottom}H${pan.left}Z`}
        className={styles['bedding']}
      />
      {outline.length === 0 ? null : (
        <path
          d={`${pathThrough(outline)}Z`}
          className={water === 'unknown' ? styles['waterUnknown'] : styles['water']}
          fill={water === 'unknown' ? 'none' : (colour ?? 'var(--part-soft)')}
        />
      )}
      <path
        d={`M${pan.left} ${pan.top}V${floorLeftY}L${pan.right} ${floorRightY}V${pan.top}`}
        className={styles['liner']}
      />
      <path
        d={sheetY === undefined || water === 'part' ? onFloor : `M${pan.left + 3} ${sheetY}H${pan.right - 3}`}
        className={styles['sheet']}
      />
    </g>
  );
}
