import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { engineVersion } from '../../../../controller/engine/index.ts';
import { type LogReader, logPath } from '../../../../controller/log/log.ts';
import { openLogReader } from '../../../../controller/log/reader.ts';
import type { LogRecord } from '../../../../shared-types/log.ts';
import { replayReportSchema } from '../../../../shared-types/log.ts';
import { recordHistory } from '../../../../sim/history.ts';
import { replayDay } from '../../../../sim/replay/replay-day.ts';
import { replaySpan } from '../../../../sim/replay/replay-span.ts';
import { reportText } from '../../../../sim/replay/report-text.ts';
import { logRecord } from '../../../support/log-records.ts';
import { demoContent, siteOf } from '../../../support/sites.ts';
import { type TemporaryFolder, temporaryFolder } from '../../../support/temporary.ts';

const control = { stepS: 10, outputExpiryS: 60 };
const site = siteOf(demoContent({ control }));
const retuned = siteOf(
  demoContent({ control, settings: { fillTimeS: 1500, fillTimeoutS: 2100, startDifferenceK: 3 } }),
);
// 21 June begins at midnight UTC in the Azores, which keep summer time.
const hour = (hours: number) => Date.UTC(2031, 5, 21) + hours * 3_600_000;
const day = '2031-06-21';

let folder: TemporaryFolder;
let reader: LogReader;
beforeAll(() => {
  folder = temporaryFolder('replay');
  const options = { dataFolder: folder.path, seed: 1, kinds: ['clear'] } as const;
  // Three runs of the controller: over midnight to noon, from 12:30 with other settings, and over midnight.
  recordHistory({ ...options, site, fromMs: hour(-2), toMs: hour(12) });
  recordHistory({ ...options, site: retuned, fromMs: hour(12.5), toMs: hour(18) });
  recordHistory({ ...options, site: retuned, fromMs: hour(18.01), toMs: hour(25) });
  reader = openLogReader(logPath(folder.path, site.name));
}, 60_000);
afterAll(() => {
  reader.close();
  folder.remove();
});

/** The log with something changed in what is read from it. */
const tampered = (changes: Partial<LogReader>): LogReader => ({ ...reader, ...changes });
function* records(change: (record: LogRecord) => LogRecord | undefined): IterableIterator<LogRecord> {
  for (const record of reader.records(day)) {
    const changed = change(record);
    if (changed !== undefined) yield changed;
  }
}
const atNine = (record: LogRecord) => record.input.nowMs === hour(9);

describe('replay of a logged day', () => {
  it('decides the same at every step, across restarts and other settings', () => {
    const report = replayDay(reader, day);
    expect(report).toMatchObject({ day, same: true, differences: 0, firstDifference: null });
    expect(report.steps).toBe([...reader.records(day)].length);
    expect(report.engineThen).toEqual([engineVersion]);
    expect(report.replayed).toEqual(report.logged);
    expect(report.remarks).toEqual(['Nothing was logged from 12:00:00 to 12:30:00.']);
    expect(replayReportSchema.safeParse(report).success).toBe(true);
  });

  it('counts what the day brought, from its first step to its last', () => {
    const summary = reader.days().find((kept) => kept.day === day);
    const { logged, steps } = replayDay(reader, day);
    expect(logged.fills).toBeGreaterThan(0);
    expect(logged.heatHomeJ).toBeGreaterThan(0);
    expect(summary?.steps).toBe(steps);
    for (const name of ['heatHomeJ', 'electricityJ', 'pumpRunS', 'starts', 'fills'] as const)
      expect(logged[name], name).toBeCloseTo(summary?.[name] ?? Number.NaN, 3);
  });

  it.each(['2031-06-20', '2031-06-22'])('is the same on %s too', (other) => {
    expect(replayDay(reader, other)).toMatchObject({ same: true, remarks: [] });
  });

  it('finds a decision that was another, and says where, what and why', () => {
    const report = replayDay(
      tampered({
        records: () =>
          records((record) =>
            atNine(record)
              ? {
                  ...record,
                  outcome: { ...record.outcome, outputs: { ...record.outcome.outputs, pumpFraction: 0.5 } },
                }
              : record,
          ),
      }),
      day,
    );
    expect(report).toMatchObject({ same: false, differences: 1 });
    expect(report.firstDifference).toMatchObject({ atMs: hour(9), fields: ['outputs.pumpFraction'] });
    expect(report.firstDifference?.logged.outputs.pumpFraction).toBe(0.5);
    expect(report.firstDifference?.replayedReason).not.toBe('');
    expect(report.firstDifference?.input.nowMs).toBe(hour(9));
  });

  it('differs when the engine is given something else', () => {
    const cold = (record: LogRecord): LogRecord => {
      const readings = { ...record.input.readings, panOutletC: { value: 1, ageMs: 0 } };
      return record.input.nowMs < hour(9) ? record : { ...record, input: { ...record.input, readings } };
    };
    const report = replayDay(tampered({ records: () => records(cold) }), day);
    expect(report.same).toBe(false);
    expect(report.firstDifference?.atMs).toBeGreaterThanOrEqual(hour(9));
    expect(report.firstDifference?.atMs).toBeLessThan(hour(9.1));
  });

  it('tells records that are missing, and takes up again behind them', () => {
    const hole = (record: LogRecord) =>
      record.input.nowMs > hour(10) && record.input.nowMs < hour(11) ? undefined : record;
    const report = replayDay(tampered({ records: () => records(hole) }), day);
    expect(report.same).toBe(true);
    expect(report.remarks).toContain('Nothing was logged from 10:00:00 to 11:00:00.');
    expect(report.remarks.some((text) => /^Steps \d+ to \d+ of run 1 are missing\.$/.test(text))).toBe(true);
  });

  it('takes no state from the step that is still to be decided, or from later', () => {
    const asked: [number, number][] = [];
    const stateBefore: LogReader['stateBefore'] = (run, step) => {
      asked.push([run, step]);
      return reader.stateBefore(run, step);
    };
    replayDay(tampered({ stateBefore }), day);
    const [first] = reader.records(day);
    expect(asked).toEqual([
      [1, (first?.step ?? 0) - 1],
      [2, 0],
      [3, 0],
    ]);
  });

  it('says so when there is no state to begin with', () => {
    const report = replayDay(tampered({ stateBefore: () => null }), day);
    expect(report.remarks.some((text) => text.includes('the engine begins anew'))).toBe(true);
    expect(report.remarks.some((text) => text.includes('No state was kept in run 2'))).toBe(true);
  });

  it('does not trust a state that is none', () => {
    const nonsense = { atMs: 0, run: 1, step: 0, engineVersion: 'x', state: { nonsense: true } };
    const report = replayDay(tampered({ stateBefore: () => nonsense }), day);
    expect(report.remarks.some((text) => text.includes('the engine begins anew'))).toBe(true);
  });

  it('leaves out steps whose settings are gone, and does not call that the same', () => {
    const report = replayDay(
      tampered({ settings: (revision) => (revision === 1 ? null : reader.settings(revision)) }),
      day,
    );
    expect(report).toMatchObject({ same: false, differences: 0 });
    expect(report.remarks.some((text) => text.includes('left out'))).toBe(true);
  });

  it('names another engine', () => {
    const report = replayDay(tampered({ engineVersion: () => '0.0.1-old' }), day);
    expect(report.engineThen).toEqual(['0.0.1-old']);
    expect(report.remarks.some((text) => text.includes('0.0.1-old'))).toBe(true);
  });

  it('refuses a day that is not kept', () => {
    expect(() => replayDay(reader, '2031-01-01')).toThrow(RangeError);
  });
});

describe('replay of a span', () => {
  it('goes over several days, from the first step to the last', () => {
    const report = replaySpan(reader, { day: '2031-06-20', lastDay: '2031-06-22' });
    const days = reader.days();
    expect(report).toMatchObject({ day: '2031-06-20', lastDay: '2031-06-22', same: true, leftOut: 0 });
    expect(report.steps).toBe(days.reduce((sum, { steps }) => sum + steps, 0));
    expect([report.fromMs, report.toMs]).toEqual([hour(-2), hour(25) - 4000]);
    expect(report.remarks).toEqual(['Nothing was logged from 2031-06-21 12:00:00 to 2031-06-21 12:30:00.']);
    expect(reportText(report, 'UTC')).toContain('2031-06-20 to 2031-06-22: all');
  });

  it('goes from one instant up to another', () => {
    const report = replaySpan(reader, { fromMs: hour(9), toMs: hour(10) });
    expect(report).toMatchObject({ day, lastDay: day, same: true, steps: 360, fromMs: hour(9) });
    expect(report.toMs).toBe(hour(10) - 10_000);
  });

  it('counts what the span alone brought, on both sides', () => {
    const { logged, replayed } = replaySpan(reader, { fromMs: hour(9), toMs: hour(10) });
    const total = (atMs: number) => [...reader.recordsWithin(atMs, atMs + 1)][0]?.outcome.total.heatHomeJ;
    const broughtJ = (total(hour(10) - 10_000) ?? 0) - (total(hour(9) - 10_000) ?? 0);
    expect(broughtJ).toBeGreaterThan(1e6);
    expect(logged.heatHomeJ).toBeCloseTo(broughtJ, 3);
    expect(replayed).toEqual(logged);
  });

  it('counts on from the run before, where it begins with a run', () => {
    const { logged, replayed } = replaySpan(reader, { fromMs: hour(12.5), toMs: hour(13) });
    const whole = replayDay(reader, day).logged;
    expect(logged.heatHomeJ).toBeGreaterThan(0);
    expect(logged.heatHomeJ).toBeLessThan(0.3 * whole.heatHomeJ);
    expect(replayed).toEqual(logged);
  });

  it('does not take all that was ever brought for a gain of the span, where no state is left', () => {
    const lost = tampered({ stateBefore: () => null });
    const { logged } = replaySpan(lost, { fromMs: hour(12.5), toMs: hour(13) });
    const known = replaySpan(reader, { fromMs: hour(12.5), toMs: hour(13) });
    expect(logged.heatHomeJ).toBeCloseTo(known.logged.heatHomeJ, -5);
  });

  it.each([
    [{ fromMs: hour(30), toMs: hour(31) }, 'nothing of 2031-06-22T06:00:00.000Z to 2031-06-22T07:00:00.000Z'],
    [{ day: '2030-01-01', lastDay: '2030-01-02' }, 'nothing of 2030-01-01 to 2030-01-02'],
    [{ day: '2030-01-01', lastDay: '2030-01-01' }, 'nothing of 2030-01-01 is kept'],
  ])('refuses a span of which nothing is kept: %j', (span, words) => {
    expect(() => replaySpan(reader, span)).toThrow(words);
  });
});

describe('replay of what another engine decided', () => {
  /** A log whose engine let the pump stand from nine for ten minutes, as the device then told. */
  const fromMs = hour(9);
  const toMs = fromMs + 600_000;
  const stood = (record: LogRecord): LogRecord => {
    const { input, outcome } = record;
    if (input.nowMs < fromMs || input.nowMs > toMs) return record;
    const reasons = { ...outcome.reasons, phase: 'resting-no-gain', pump: 'resting-no-gain' } as const;
    const outputs = { ...outcome.outputs, pumpFraction: 0 };
    // The device follows a step later.
    const followed = input.nowMs > fromMs && input.feedback !== null;
    const feedback = followed ? { ...input.feedback, pumpFraction: 0 } : input.feedback;
    return {
      ...record,
      input: { ...input, feedback } as LogRecord['input'],
      outcome: { ...outcome, phase: 'resting', outputs, reasons },
    };
  };
  const other = { records: () => records(stood), engineVersion: () => '0.0.1-old' };

  it('tells where the loop would have been driven otherwise, why, and what that does', () => {
    const report = replayDay(tampered(other), day);
    expect(report).toMatchObject({ same: false, partings: 1 });
    expect(report.parted).toMatchObject([
      {
        fromMs,
        toMs,
        steps: 61,
        logged: { phase: 'resting', pumpFraction: 0, drainOpen: false },
        replayed: { phase: 'circulating', pumpFraction: 1, drainOpen: false },
      },
    ]);
    expect(report.parted[0]?.logged.reason).not.toBe(report.parted[0]?.replayed.reason);
    expect(report.asked.logged.starts).toBe(report.asked.replayed.starts + 1);
    expect(report.asked.replayed.pumpRunS - report.asked.logged.pumpRunS).toBeCloseTo(610, 6);
    expect(report.asked.logged.fills).toBe(report.asked.replayed.fills);
    expect(report.byField).toMatchObject({
      phase: 61,
      'outputs.pumpFraction': 61,
      'reasons.phase': 61,
      'reasons.pump': 61,
    });
    expect(report.byCause[0]).toEqual({
      logged: 'resting-no-gain',
      replayed: 'circulating-for-heat',
      steps: 61,
    });
    expect(report.decidedOtherwise).toBe(report.byCause.reduce((sum, cause) => sum + cause.steps, 0));
    expect(report.remarks.some((text) => text.includes('were withheld'))).toBe(true);
    const text = reportText(report, 'UTC');
    expect(text).toContain('driven otherwise in 1 stretch.');
    expect(text).toContain('09:00:00 to 09:10:00, 61 steps');
    expect(text).toContain('      61  resting-no-gain -> circulating-for-heat');
  });

  it('gives this engine every input where it decided itself, and so finds the device not following', () => {
    const report = replayDay(tampered({ ...other, engineVersion: () => engineVersion }), day);
    expect(report.byField['alarms']).toBeGreaterThan(0);
  });
});

describe('memory of a replay', () => {
  it('does not grow with the span', () => {
    setFlagsFromString('--expose-gc');
    const collect: () => void = runInNewContext('gc');
    const [first] = reader.records(day);
    const heap: number[] = [];
    function* long(): IterableIterator<LogRecord> {
      for (let step = 1; step <= 12_000; step++) {
        const record = logRecord(step, { run: first?.run ?? 1 });
        yield { ...record, outcome: structuredClone(record.outcome) };
        if (step % 6000 === 0) {
          collect();
          heap.push(process.memoryUsage().heapUsed);
        }
      }
    }
    replayDay(tampered({ records: long }), day);
    // Six thousand records that were kept would be more than six megabytes.
    expect((heap[1] ?? Number.NaN) - (heap[0] ?? Number.NaN)).toBeLessThan(1e6);
  });
});
