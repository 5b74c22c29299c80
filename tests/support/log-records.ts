import type { Totals } from '../../shared-types/engine.ts';
import type { LogRecord } from '../../shared-types/log.ts';

export const noTotals: Totals = {
  heatHomeJ: 0,
  heatLostJ: 0,
  electricityJ: 0,
  pumpRunS: 0,
  starts: 0,
  fills: 0,
};

/** Noon of the day that invented records stand on, in UTC. */
export const noonMs = Date.UTC(2031, 5, 21, 12);

type Changes = Partial<Omit<LogRecord, 'input' | 'outcome'>> & {
  readonly input?: Partial<LogRecord['input']>;
  readonly outcome?: Partial<LogRecord['outcome']>;
};

/** A record of step `step`, ten seconds after the one before, with what is given changed. */
export function logRecord(step: number, { input, outcome, ...rest }: Changes = {}): LogRecord {
  return {
    run: 1,
    step,
    siteRevision: 1,
    settingsRevision: 1,
    ...rest,
    input: {
      nowMs: noonMs + step * 10_000,
      elapsedMs: step === 1 ? null : 10_000,
      localDay: '2031-06-21',
      readings: {
        panOutletC: { value: 40 + step / 8, ageMs: 250 },
        storeBottomC: { value: 30.5, ageMs: 40 },
      },
      feedback: { pumpFraction: 1, drainOpen: false, ageMs: 120 },
      request: null,
      ...input,
    },
    outcome: {
      phase: 'circulating',
      outputs: { pumpFraction: 1, drainOpen: false, drainPumpOn: false, exchangerPumpOn: false },
      reasons: { phase: 'circulating-for-heat', pump: 'circulating-for-heat', drain: 'drain-closed-to-hold' },
      alarms: [],
      failed: [],
      total: { ...noTotals, heatHomeJ: step * 1000, pumpRunS: step * 10 },
      ...outcome,
    },
  };
}

/** Records of the steps `from` to `to`, both included. */
export function logRecords(from: number, to: number): LogRecord[] {
  return Array.from({ length: to - from + 1 }, (_, index) => logRecord(from + index));
}
