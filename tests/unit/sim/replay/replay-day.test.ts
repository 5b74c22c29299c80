import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { engineVersion } from '../../../../controller/engine/index.ts';
import { type LogReader, logPath } from '../../../../controller/log/log.ts';
import { openLogReader } from '../../../../controller/log/reader.ts';
import type { LogRecord } from '../../../../shared-types/log.ts';
import { replayReportSchema } from '../../../../shared-types/log.ts';
import { recordHistory } from '../../../../sim/history.ts';
import { replayDay } from '../../../../sim/replay/replay-day.ts';
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
