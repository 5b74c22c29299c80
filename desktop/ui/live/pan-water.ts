import type { Elevation, Point } from './elevation.ts';

/**
 * Outline of the water in the pan; empty when it is drained. Water lies level on the falling floor,
 * so that a shallow rest gathers at the low end.
 *
 * @param fill - Share of the full depth, 0 to 1.
 */
export function panWater(elevation: Elevation, fill: number): readonly Point[] {
  if (fill <= 0) return [];
  const { pan, floorLeftY, floorRightY } = elevation;
  const surfaceY = floorRightY - (floorRightY - elevation.surfaceY) * fill;
  const shoreShare = (surfaceY - floorLeftY) / (floorRightY - floorLeftY || 1);
  // Above the high end of the floor the water reaches the wall; below it, it ends at a shore.
  const reachesWall = surfaceY <= floorLeftY;
  const shoreX = reachesWall ? pan.left : pan.left + (pan.right - pan.left) * shoreShare;
  const high = reachesWall ? [{ x: pan.left, y: floorLeftY }] : [];
  return [
    ...high,
    { x: shoreX, y: surfaceY },
    { x: pan.right, y: surfaceY },
    { x: pan.right, y: floorRightY },
  ];
}
