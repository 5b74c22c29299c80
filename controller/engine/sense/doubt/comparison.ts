import type { Channel } from '../../../../shared-types/channels.ts';
import type { TrustedReadings } from '../../../../shared-types/readings.ts';
import type { Situation } from '../../situation.ts';
import { usable } from '../facts.ts';
import type { ComparisonName } from './names.ts';

/** How long it has been dark [ms]; null while it is not, or while nothing tells. */
export type DarkMs = number | null;

/**
 * One comparison of sensors.
 *
 * `judge` gives null while they cannot be compared, else the sensors that must be wrong: none when they agree,
 * more than one when it cannot be told which.
 */
export interface Comparison {
  readonly name: ComparisonName;
  /** Looks, one a minute, that have to speak against the sensors before they are in doubt. */
  readonly looks: number;
  /**
   * Looks in a row that have to speak for them before they are cleared: many where a wrong sensor passes at most
   * hours of the day.
   */
  readonly looksToClear: number;
  readonly judge: (situation: Situation, darkMs: DarkMs) => readonly Channel[] | null;
}

/** What a sensor says; null where it says nothing, and where its own readings already tell that it is wrong. */
export function saidBy(readings: TrustedReadings, channel: Channel): number | null {
  const reading = readings[channel];
  if (reading?.quality === 'doubtful' && (reading.cause === 'stuck' || reading.cause === 'noisy'))
    return null;
  return usable(reading);
}

export const agree: readonly Channel[] = [];
