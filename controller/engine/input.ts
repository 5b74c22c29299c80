import { type Channel, channels } from '../../shared-types/channels.ts';
import type { EngineInput, Feedback } from '../../shared-types/engine.ts';
import type { RawReading, RawReadings, SensorFault } from '../../shared-types/readings.ts';

type Loose = Readonly<Record<string, unknown>>;

const faults: readonly unknown[] = ['open-circuit', 'short-circuit', 'unreadable'] satisfies SensorFault[];
const dayForm = /^\d{4}-\d{2}-\d{2}$/;

/** An input of which every part has its type; requests are judged by the operator's own rules. */
export type SoundInput = Omit<EngineInput, 'localDay' | 'request'> & {
  readonly localDay: string | null;
  readonly request: unknown;
};

/**
 * Takes from any JSON what an input should be; what is no such thing counts as absent.
 *
 * The engine is the last to judge what drives a pump, so it relies on nobody's check before it.
 */
export function readInput(given: unknown): SoundInput {
  const input = loose(given);
  const { nowMs, elapsedMs, localDay, request } = input;
  return {
    nowMs: finite(nowMs) ? nowMs : 0,
    elapsedMs: finite(elapsedMs) && elapsedMs >= 0 ? elapsedMs : null,
    localDay: typeof localDay === 'string' && dayForm.test(localDay) ? localDay : null,
    readings: readReadings(loose(input['readings'])),
    feedback: readFeedback(input['feedback']),
    request: request ?? null,
  };
}

function readReadings(given: Loose): RawReadings {
  const readings: { -readonly [C in Channel]?: RawReading } = {};
  for (const channel of channels) {
    const reading = given[channel];
    if (reading !== undefined) readings[channel] = readReading(loose(reading));
  }
  return readings;
}

function readReading({ value, ageMs, fault }: Loose): RawReading {
  return {
    value: typeof value === 'number' ? value : null,
    // An age that cannot be told is no reason to take a reading for fresh.
    ageMs: finite(ageMs) && ageMs >= 0 ? ageMs : Number.POSITIVE_INFINITY,
    ...(faults.includes(fault) ? { fault: fault as SensorFault } : {}),
  };
}

function readFeedback(given: unknown): Feedback | null {
  const { pumpFraction, drainOpen, ageMs } = loose(given);
  if (!finite(pumpFraction) || !finite(ageMs)) return null;
  return { pumpFraction, drainOpen: typeof drainOpen === 'boolean' ? drainOpen : null, ageMs };
}

export function loose(given: unknown): Loose {
  return typeof given === 'object' && given !== null ? (given as Loose) : {};
}

export function finite(value: unknown): value is number {
  return typeof value === 'number' && Number.isFinite(value);
}
