import type { Channel } from '../../../shared-types/channels.ts';
import { declarationOf, type Fault } from '../../../sim/plant/faults.ts';

/** Faults of a sensor that the engine is told of: it does not take a lie for the truth. */
const honest: ReadonlySet<string> = new Set([
  'sensor-open',
  'sensor-short',
  'sensor-silent',
  'topic-silent',
  'sensor-intermittent',
]);

/** True while a sensor of the channels says other than what is, without saying so. */
export function lies(faults: readonly Fault[], channels: readonly Channel[]): boolean {
  return faults.some(
    ({ name, channel, other }) =>
      declarationOf(name).on !== 'part' &&
      !honest.has(name) &&
      channels.some((own) => own === channel || own === other),
  );
}

/** True while anything at all is wrong with a sensor of the channels. */
export function ails(faults: readonly Fault[], channels: readonly Channel[]): boolean {
  return faults.some(({ channel, other }) => channels.some((own) => own === channel || own === other));
}

export function has(faults: readonly Fault[], ...names: readonly Fault['name'][]): boolean {
  return faults.some(({ name }) => names.includes(name));
}
