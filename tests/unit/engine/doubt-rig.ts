import type { Channel } from '../../../shared-types/channels.ts';
import type { Loop } from './rig.ts';

/** The sensors in doubt, with cause and accuser, in the order of their names. */
export function doubtsOf(loop: Loop): string[] {
  return Object.entries(loop.state.watch.doubts)
    .map(([channel, { cause, by }]) => `${channel} ${cause} ${by}`)
    .sort();
}

export function causeOf(loop: Loop, channel: Channel): string {
  const reading = loop.last.belief.readings[channel];
  return reading === undefined || reading.quality === 'good' ? 'good' : reading.cause;
}

/** Steps a minute at a time. */
export function minutes(loop: Loop, count: number): Loop {
  return loop.run(count * 60, 60);
}
