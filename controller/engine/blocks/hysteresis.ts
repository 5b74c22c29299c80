/**
 * A switch with two thresholds: on at `onAt` or above, off below `offBelow`, else as before.
 *
 * @param offBelow - Not above `onAt`.
 */
export function hysteresis(wasOn: boolean, value: number, onAt: number, offBelow: number): boolean {
  return value >= onAt || (wasOn && value >= offBelow);
}
