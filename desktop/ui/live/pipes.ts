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
}

/** Distance of a pipe from what it passes, and of its mouth from the wall it pierces [px]. */
const clearPx = 14;

/** Leads feed, return and drain around what they connect. */
export function pipesOf(elevation: Elevation, site: Pick<Site, 'drain' | 'outlet' | 'heatDump'>): Pipes {
  const { pan, store, onRoof, groundY, floorLeftY, surfaceY } = elevation;
  const riserX = pan.left - clearPx;
  const mouth: Point = { x: pan.left + clearPx, y: Math.min(surfaceY, floorLeftY) - 1 };
  const drawY = store.bottom - clearPx;
  const overWallY = pan.top - 8;
  const intoPan = [{ x: riserX, y: overWallY }, { x: mouth.x, y: overWallY }, mouth];
  const pumpX = onRoof ? Math.max(riserX + 34, store.left - 110) : (pan.right + store.left) / 2;
  const feed = onRoof
    ? [{ x: store.left, y: drawY }, { x: riserX, y: drawY }, ...intoPan]
    : [
        { x: store.left, y: drawY },
        { x: pumpX - 22, y: drawY },
        { x: pumpX - 22, y: groundY + 10 },
        { x: riserX, y: groundY + 10 },
        ...intoPan,
      ];
  const back = returnPipe(elevation);
  return {
    feed,
    pump: { x: pumpX, y: drawY },
    back,
    radiator: site.heatDump === undefined ? undefined : onLongest(back, 0.75).at,
    ...drainPipe(elevation, site.drain),
  };
}

function returnPipe({ pan, store, onRoof, surfaceY }: Elevation): readonly Point[] {
  const start = { x: pan.right, y: surfaceY + 2 };
  const outX = pan.right + clearPx;
  if (onRoof) return [start, { x: outX, y: start.y }, { x: outX, y: store.top + 10 }];
  const aboveY = Math.min(start.y, store.top - 12);
  const inX = store.left + clearPx;
  return [
    start,
    { x: outX, y: start.y },
    { x: outX, y: aboveY },
    { x: inX, y: aboveY },
    { x: inX, y: store.top + 10 },
  ];
}

function drainPipe(elevation: Elevation, drain: Site['drain']): Pick<Pipes, 'drain' | 'valve'> {
  const { pan, store, onRoof, floorRightY, roof, groundY } = elevation;
  // Where stopping the pump empties the pan, its water runs back through the feed: no pipe of its own.
  if (drain === 'none' || drain === 'pump-stop') return { drain: undefined, valve: undefined };
  const x = onRoof ? Math.max(pan.right - 2 * clearPx, store.left + 8) : pan.right - 2 * clearPx;
  const endY = onRoof ? store.top + 10 : groundY + 6;
  return {
    drain: [
      { x, y: floorRightY },
      { x, y: endY },
    ],
    valve: { x, y: onRoof ? (roof.bottom + store.top) / 2 : (floorRightY + endY) / 2 },
  };
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
