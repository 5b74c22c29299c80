import { type FollowOptions, follow } from './follow.ts';
import type { SkyColumns } from './sky-columns.ts';
import type { LoggedSpan } from './span.ts';

/** What two cheap thermometers may disagree by: a standard deviation [K]; half a kelvin to either side each. */
const pairSdK = 0.4;
/**
 * One window says nearly what the one before it said, and a loss that is not as assumed looks like an offset: so little
 * of what the windows say counts. A design choice: with more of it drawn days came out further from the truth.
 */
const believed = 0.05;
const triedK = 0.5;
const mostK = 0.6;

/**
 * What the pan's thermometer shows more than the store bottom's when both are alike [K], where the sun is told by
 * them alone. A dry sheet and resting water tell the sun without the store; flowing water tells it by the difference to
 * the store. Only the true offset lets the sun shine through a change of phase as it did before.
 *
 * The parabola through three tried offsets has its lowest point where all is the least unlikely.
 */
export function panOffsetOf(span: LoggedSpan, sky: SkyColumns, options: FollowOptions): number {
  if (options.steps.factor === 0) return 0;
  const unlikely = (panOffsetK: number) =>
    believed * follow(span, sky, { ...options, panOffsetK }).unlikely + (panOffsetK / pairSdK) ** 2;
  const [below, middle, above] = [unlikely(-triedK), unlikely(0), unlikely(triedK)];
  const bend = below + above - 2 * middle;
  // A hill has no lowest point: then nothing is known.
  if (bend <= 0) return 0;
  return Math.min(mostK, Math.max(-mostK, (triedK * (below - above)) / (2 * bend)));
}
