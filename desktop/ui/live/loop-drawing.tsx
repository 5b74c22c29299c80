import type { Site } from '../../../shared-types/site.ts';
import { selectPhase, selectWater } from '../store/decision-selectors.ts';
import { useLive } from '../store/live-store.ts';
import { en } from '../text/en.ts';
import { Building } from './drawing/building.tsx';
import styles from './drawing/drawing.module.css';
import { labelPlaces } from './drawing/label-places.ts';
import { LoopLabels } from './drawing/labels.tsx';
import { Pan } from './drawing/pan.tsx';
import { Pipework } from './drawing/pipework.tsx';
import { Reservoir } from './drawing/reservoir.tsx';
import { Store } from './drawing/store.tsx';
import type { Elevation } from './elevation.ts';
import { pipesOf } from './pipes.ts';

interface Props {
  readonly site: Site;
  readonly elevation: Elevation;
}

/** Roof, pan, pipes, pump and store from the side. The sensor list beside it says the same in words. */
export function LoopDrawing({ site, elevation }: Props) {
  const phase = useLive(selectPhase);
  const water = useLive(selectWater);
  const pipes = pipesOf(elevation, site);
  const { width, height } = elevation;
  const name = en.live.drawing.describe([
    phase === undefined ? '' : `${en.phases[phase]}.`,
    `${en.live.drawing.pan}: ${en.live.drawing.water[water]}.`,
  ]);
  return (
    <svg
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={name}
      className={styles['svg']}
    >
      <Building elevation={elevation} />
      <Store site={site} elevation={elevation} />
      {elevation.reservoir === undefined ? null : <Reservoir box={elevation.reservoir} />}
      <Pan elevation={elevation} />
      <Pipework pipes={pipes} site={site} />
      <LoopLabels site={site} places={labelPlaces(elevation, pipes)} />
    </svg>
  );
}
