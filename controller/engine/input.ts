import type { EngineInput, Feedback } from '../../shared-types/engine.ts';
import type { SensorFault } from '../../shared-types/readings.ts';

type Loose = Readonly<Record<string, unknown>>;

const dayForm = /^\d{4}-\d{2}-\d{2}$/;

/** Readings of any JSON; `readReading` takes from each what a reading should be. */
export type LooseReadings = Loose;

/** A reading of which every part has its type. */
export interface SoundReading {
  /** Null for what is no number; NaN and infinities are judged later. */
  readonly value: number | null;
  readonly ageMs: number;
  readonly fault: SensorFault | null;
}

/** An input of which every part has its type; requests are judged by the operator's own rules. */
export type SoundInput = Omit<EngineInput, 'localDay' | 'readings' | 'request'> & {
  readonly localDay: string | null;
  readonly readings: LooseReadings;
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
    readings: loose(input['readings']),
    feedback: readFeedback(input['feedback']),
    request: request ?? null,
  };
}

/** The same for one reading; undefined where there is none. */
export function readReading(given: unknown): SoundReading | undefined {
  if (given === undefined) return undefined;
  const { value, ageMs, fault } = loose(given);
  return {
    value: typeof value === 'number' ? value : null,
    // An age that cannot be told is no reason to take a reading for fresh.
    ageMs: finite(ageMs) && ageMs >= 0 ? ageMs : Number.POSITIVE_INFINITY,
    fault: isFault(fault) ? fault : null,
  };
}

function isFault(fault: unknown): fault is SensorFault {
  return fault === 'open-circuit' || fault === 'short-circuit' || fault === 'unreadable';
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
  return Number.isFinite(value);
}
