import type { Channel } from '../../shared-types/channels.ts';
import type { Feedback } from '../../shared-types/engine.ts';
import type { RawReadings } from '../../shared-types/readings.ts';
import type { Clock } from '../clock.ts';
import type { SensorValue } from './sensor-value.ts';

export type FeedbackValue = Omit<Feedback, 'ageMs'>;

/** The newest word of each sensor and of the outputs, with the steady instant at which it came. */
export interface ReadingShelf {
  put(channel: Channel, value: SensorValue): void;
  putFeedback(value: FeedbackValue): void;
  readings(): RawReadings;
  feedback(): Feedback | null;
}

export function createReadingShelf(clock: Clock): ReadingShelf {
  const newest = new Map<Channel, { value: SensorValue; atMs: number }>();
  let outputs: { value: FeedbackValue; atMs: number } | undefined;
  const ageMs = (atMs: number): number => Math.max(0, clock.steadyMs() - atMs);
  return {
    put: (channel, value) => {
      newest.set(channel, { value, atMs: clock.steadyMs() });
    },
    putFeedback: (value) => {
      outputs = { value, atMs: clock.steadyMs() };
    },
    readings: () => {
      const readings: RawReadings = {};
      for (const [channel, { value, atMs }] of newest) readings[channel] = { ...value, ageMs: ageMs(atMs) };
      return readings;
    },
    feedback: () => (outputs === undefined ? null : { ...outputs.value, ageMs: ageMs(outputs.atMs) }),
  };
}
