import type { EngineInput, Feedback, OperatorRequest } from '../../shared-types/engine.ts';
import type { RawReading, RawReadings } from '../../shared-types/readings.ts';
import type { LocalDays } from '../log/local-day.ts';

interface Heard {
  readonly nowMs: number;
  readonly elapsedMs: number | null;
  readonly readings: RawReadings;
  readonly feedback: Feedback | null;
  readonly request: OperatorRequest | null;
}

/**
 * What a step is given, in the form in which it is logged, so that a replay is given the very same.
 *
 * Times are whole milliseconds: finer ones say nothing and cost room. What is no number becomes
 * `unreadable`, and -0 becomes 0, since JSON and SQLite hold neither.
 */
export function inputOf(heard: Heard, days: LocalDays): EngineInput {
  const { nowMs, elapsedMs, feedback, request } = heard;
  return {
    nowMs,
    elapsedMs,
    localDay: days.dayOf(nowMs),
    readings: Object.fromEntries(
      Object.entries(heard.readings).map(([channel, reading]) => [channel, loggable(reading)]),
    ),
    feedback:
      feedback === null
        ? null
        : { ...feedback, pumpFraction: feedback.pumpFraction + 0, ageMs: wholeAge(feedback.ageMs) },
    request,
  };
}

function loggable({ value, ageMs, fault }: RawReading): RawReading {
  const isNumber = value === null || Number.isFinite(value);
  const known = isNumber ? fault : 'unreadable';
  return {
    value: value === null || !isNumber ? null : value + 0,
    ageMs: wholeAge(ageMs),
    ...(known === undefined ? {} : { fault: known }),
  };
}

const wholeAge = (ageMs: number) => Math.max(0, Math.round(ageMs)) + 0;
