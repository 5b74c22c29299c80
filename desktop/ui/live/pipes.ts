import type { Site } from '../../../shared-types/site.ts';
import type { Elevation, Point } from './elevation.ts';

/** Pipes of a side view, each a line from where the water comes to where it goes. */
export interface Pipes {
  readonly feed: readonly Point[];
  readonly back: readonly Point[];
  readonly drain: readonly Point[] | undefined;
  readonly pump: Point;
  readonly valve: Point | undefined;
  /** The radiator of a heat dump, on the return. */
  readonly radiator: Point | undefined;
  /** From the reservoir's exchanger to the store, and back. */
  readonly exchanger: { readonly warm: readonly Point[]; readonly cool: readonly Point[] } | undefined;
}

/** Distance of a pipe from what it passes, and of its mouth from the wall it pierces [px]. */
const clearPx = 14;

type Plumbed = Pick<Site, 'drain' | 'outlet' | 'heatDump'>;

/** Leads feed, return and drain around what they connect: the pan, and the vessel that its water comes from. */
export function pipesOf(elevation: Elevation, site: Plumbed): Pipes {
  const back = returnPipe(elevation, site);
  return {
    ...feedPipe(elevation),
    back,
    radiator: site.heatDump === undefined ? undefined : onLongest(back, 0.75).at,
    ...drainPipe(elevation, site.drain),
    exchanger: exchangerPipes(elevation),
  };
}

/** The vessel that fills the pan and takes its water back. */
const vesselOf = ({ reservoir, store }: Elevation) => reservoir ?? store;

function feedPipe(elevation: Elevation): Pick<Pipes, 'feed' | 'pump'> {
  const { pan, store, reservoir, onRoof, groundY, floorLeftY, surfaceY } = elevation;
  const vessel = vesselOf(elevation);
  const riserX = pan.left - clearPx;
  const mouth: Point = { x: pan.left + clearPx, y: Math.min(surfaceY, floorLeftY) - 1 };
  const drawY = vessel.bottom - clearPx;
  const belowY = groundY + 8;
  const overWallY = pan.top - 8;
  const intoPan = [{ x: riserX, y: overWallY }, { x: mouth.x, y: overWallY }, mouth];
  if (!onRoof) {
    const pumpX = (pan.right + vessel.left) / 2;
    const out = { x: vessel.left, y: drawY };
    const down = [
      { x: pumpX - 22, y: drawY },
      { x: pumpX - 22, y: belowY },
      { x: riserX, y: belowY },
    ];
    return { feed: [out, ...down, ...intoPan], pump: { x: pumpX, y: drawY } };
  }
  const pumpX = Math.max(riserX + 34, store.left - 110);
  // From a reservoir behind the store the feed passes below it.
  const y = reservoir === undefined ? drawY : belowY;
  const middleX = (vessel.left + vessel.right) / 2;
  const out =
    reservoir === undefined
      ? [{ x: vessel.left, y }]
      : [
          { x: middleX, y: vessel.bottom },
          { x: middleX, y },
        ];
  return { feed: [...out, { x: riserX, y }, ...intoPan], pump: { x: pumpX, y } };
}

/** From a low outlet at the floor, from any other at the surface. */
function returnPipe(elevation: Elevation, { outlet }: Plumbed): readonly Point[] {
  const { pan, onRoof, surfaceY, floorRightY } = elevation;
  const vessel = vesselOf(elevation);
  const start = { x: pan.right, y: outlet === 'low' ? floorRightY - 2 : surfaceY + 2 };
  const outX = pan.right + clearPx;
  if (onRoof) return [start, { x: outX, y: start.y }, { x: outX, y: vessel.top + 10 }];
  const aboveY = Math.min(start.y, vessel.top - 12);
  const inX = vessel.left + clearPx;
  return [
    start,
    { x: outX, y: start.y },
    { x: outX, y: aboveY },
    { x: inX, y: aboveY },
    { x: inX, y: vessel.top + 10 },
  ];
}

function drainPipe(elevation: Elevation, drain: Site['drain']): Pick<Pipes, 'drain' | 'valve'> {
  const { pan, onRoof, floorRightY, roof, groundY } = elevation;
  const vessel = vesselOf(elevation);
  // Where stopping the pump empties the pan, its water runs back through the feed: no pipe of its own.
  if (drain === 'none' || drain === 'pump-stop') return { drain: undefined, valve: undefined };
  const x = onRoof ? Math.max(pan.right - 2 * clearPx, vessel.left + 8) : pan.right - 2 * clearPx;
  const endY = onRoof ? vessel.top + 10 : groundY + 6;
  return {
    drain: [
      { x, y: floorRightY },
      { x, y: endY },
    ],
    valve: { x, y: onRoof ? (roof.bottom + vessel.top) / 2 : (floorRightY + endY) / 2 },
  };
}

/** Two short pipes between the reservoir's exchanger and the lower half of the store, whichever stands left. */
function exchangerPipes({ reservoir, store }: Elevation): Pipes['exchanger'] {
  if (reservoir === undefined) return undefined;
  const [fromX, toX] =
    reservoir.left > store.right ? [reservoir.left, store.right] : [reservoir.right, store.left];
  const height = Math.min(reservoir.bottom - reservoir.top, store.bottom - store.top);
  const pipe = (share: number) => {
    const y = store.bottom - share * height;
    return [
      { x: fromX, y },
      { x: toX, y },
    ];
  };
  return { warm: pipe(0.6), cool: pipe(0.25).reverse() };
}

/** A place on the longest straight stretch of a pipe, and which way the water goes there [deg]. */
export function onLongest(
  points: readonly Point[],
  share: number,
): { readonly at: Point; readonly angleDeg: number } {
  const stretches = points.slice(1).map((to, index) => ({ from: points[index] as Point, to }));
  const length = ({ from, to }: { from: Point; to: Point }) => Math.hypot(to.x - from.x, to.y - from.y);
  const { from, to } = stretches.reduce((best, one) => (length(one) > length(best) ? one : best));
  const at = { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share };
  return { at, angleDeg: (Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI };
}

/** A line through points as an SVG path. */
export function pathThrough(points: readonly Point[]): string {
  return points
    .map(({ x, y }, index) => `${index === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`)
    .join('');
}
