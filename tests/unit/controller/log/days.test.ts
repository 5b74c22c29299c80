import { statSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { openLogWriter } from '../../../../controller/log/writer.ts';
import type { LogRecord } from '../../../../shared-types/log.ts';
import { logRecord, logRecords, noonMs, noTotals } from '../../../support/log-records.ts';
import { demoContent, siteOf } from '../../../support/sites.ts';
import { read, withLog, writeLog } from './log-rig.ts';

const heat = (heatHomeJ: number) => ({ total: { ...noTotals, heatHomeJ } });
const onDay = (step: number, localDay: string, heatHomeJ: number, run = 1): LogRecord =>
  logRecord(step, { run, input: { localDay }, outcome: heat(heatHomeJ) });

const heatOfDays = (path: string) =>
  read(path, (log) => log.days().map(({ day, heatHomeJ }) => [day, heatHomeJ]));

describe('the days of a log', () => {
  it('sum up what their steps brought', () =>
    withLog((path) => {
      writeLog(path, [onDay(1, '2031-06-21', 0), onDay(2, '2031-06-21', 500), onDay(3, '2031-06-22', 800)]);
      writeLog(path, [onDay(1, '2031-06-22', 800, 2), onDay(2, '2031-06-22', 900, 2)]);
      expect(heatOfDays(path)).toEqual([
        ['2031-06-21', 500],
        ['2031-06-22', 400],
      ]);
    }));

  it('count on when totals begin anew', () =>
    withLog((path) => {
      writeLog(path, [onDay(1, '2031-06-21', 100), onDay(2, '2031-06-21', 700)]);
      writeLog(path, [onDay(1, '2031-06-21', 0, 2), onDay(2, '2031-06-21', 50, 2)]);
      expect(heatOfDays(path)).toEqual([['2031-06-21', 650]]);
    }));

  it('take a day up again that the calendar left and came back to', () =>
    withLog((path) => {
      const days = ['2031-06-21', '2031-06-22', '2031-06-21', '2031-06-22'];
      writeLog(
        path,
        days.map((day, index) => onDay(index + 1, day, 10 ** index)),
      );
      expect(heatOfDays(path)).toEqual([
        ['2031-06-21', 90],
        ['2031-06-22', 909],
      ]);
      expect(read(path, (log) => [...log.records('2031-06-21')].map(({ step }) => step))).toEqual([1, 3]);
    }));

  it('count alarms when they come, and covered time without the holes', () =>
    withLog((path) => {
      const alarms = [[], ['store-hot'], ['store-hot'], [], ['store-hot', 'liner-hot']] as const;
      writeLog(
        path,
        alarms.map((codes, index) => logRecord(index + 1, { outcome: { alarms: [...codes] } })),
      );
      writeLog(path, [logRecord(1, { run: 2, input: { elapsedMs: 3_600_000 } })]);
      const [day] = read(path, (log) => log.days());
      expect(day).toMatchObject({ alarms: 3, steps: 6, firstMs: noonMs + 10_000, lastMs: noonMs + 50_000 });
      expect(day?.coveredFraction).toBe(40_000 / 86_400_000);
    }));

  it('are as long as the zone of the site makes them', () =>
    withLog((path) => {
      const writer = openLogWriter(path);
      // In 2031 summer time begins there on 30 March: a day of 23 hours.
      writer.keepSite(siteOf(demoContent({ timeZone: 'Europe/Lisbon' })), 0);
      writer.append(logRecord(2, { input: { localDay: '2031-03-30', elapsedMs: 46_000 } }));
      writer.close();
      expect(read(path, (log) => log.days())[0]?.coveredFraction).toBe(46_000 / (23 * 3_600_000));
    }));
});

describe('the curves of a day', () => {
  const missed = logRecord(2, {
    input: { readings: { panOutletC: { value: 300, ageMs: 1 }, ambientC: { value: 12, ageMs: 1 } } },
    outcome: { failed: ['panOutletC'] },
  });

  it('are null where a reading failed or was missing', () =>
    withLog((path) => {
      writeLog(path, [logRecord(1), missed, logRecord(3)]);
      const curves = read(path, (log) => log.day('2031-06-21'));
      expect(curves.atMs).toEqual([1, 2, 3].map((step) => noonMs + step * 10_000));
      expect(curves.series).toEqual({
        panOutletC: [40.125, null, 40.375],
        storeBottomC: [30.5, null, 30.5],
        ambientC: [null, 12, null],
      });
      expect(curves.heatTodayJ).toEqual([0, 1000, 2000]);
      expect(curves.pumpFraction).toEqual([1, 1, 1]);
    }));

  it('show a channel that failed all day as a gap, and none that was never there', () =>
    withLog((path) => {
      writeLog(path, [logRecord(1, { input: { readings: {} }, outcome: { failed: ['panInletC'] } })]);
      expect(read(path, (log) => log.day('2031-06-21').series)).toEqual({ panInletC: [null] });
    }));

  it('tell phases as spans that end at a change of phase or reason, and at a hole', () =>
    withLog((path) => {
      const resting = {
        phase: 'resting',
        reasons: { phase: 'resting-no-gain', pump: 'resting-no-gain', drain: 'drain-closed-to-hold' },
      } as const;
      const late = { input: { nowMs: noonMs + 400_000 } };
      writeLog(path, [
        ...logRecords(1, 3),
        logRecord(4, { outcome: resting }),
        logRecord(5, { ...late, outcome: resting }),
      ]);
      const at = (seconds: number) => noonMs + seconds * 1000;
      expect(read(path, (log) => log.day('2031-06-21').phases)).toEqual([
        { phase: 'circulating', reason: 'circulating-for-heat', fromMs: at(10), toMs: at(40) },
        { phase: 'resting', reason: 'resting-no-gain', fromMs: at(40), toMs: at(40) },
        { phase: 'resting', reason: 'resting-no-gain', fromMs: at(400), toMs: at(400) },
      ]);
    }));

  it('carry the events between the midnights of the zone', () =>
    withLog((path) => {
      const writer = openLogWriter(path);
      writer.keepSite(siteOf(demoContent()), 0);
      writer.append(logRecord(1));
      // Local time is UTC in the summer of the demo's zone.
      const times = [
        Date.UTC(2031, 5, 21) - 1,
        Date.UTC(2031, 5, 21),
        Date.UTC(2031, 5, 22) - 1,
        Date.UTC(2031, 5, 22),
      ];
      for (const atMs of times)
        writer.event({ atMs, kind: 'link-back', text: `${atMs}`, values: { a: 1, b: null } });
      writer.close();
      read(path, (log) => {
        expect(log.day('2031-06-21').events.map(({ atMs }) => atMs)).toEqual(times.slice(1, 3));
        expect(log.events(2).map(({ atMs }) => atMs)).toEqual(times.slice(2).reverse());
        expect(log.events(1)[0]).toEqual({
          atMs: times[3],
          kind: 'link-back',
          text: `${times[3]}`,
          values: { a: 1, b: null },
        });
      });
    }));

  it('give the newest events of some kinds only', () =>
    withLog((path) => {
      const writer = openLogWriter(path);
      const kinds = ['alarm-raised', 'phase-changed', 'alarm-returned', 'link-lost'] as const;
      for (const [index, kind] of kinds.entries())
        writer.event({ atMs: index, kind, text: kind, values: {} });
      writer.close();
      read(path, (log) => {
        const kindsOf = (limit: number) =>
          log.events(limit, ['alarm-raised', 'alarm-returned']).map(({ kind }) => kind);
        expect(kindsOf(5)).toEqual(['alarm-returned', 'alarm-raised']);
        expect(kindsOf(1)).toEqual(['alarm-returned']);
      });
    }));

  it('are counted with the size and the span of the whole', () =>
    withLog((path) => {
      expect(read(path, (log) => log.facts())).toEqual({
        sizeBytes: 0,
        firstMs: null,
        lastMs: null,
        days: 0,
        steps: 0,
        runs: 0,
      });
      openLogWriter(path).close();
      expect(read(path, (log) => log.facts())).toMatchObject({
        firstMs: null,
        lastMs: null,
        days: 0,
        runs: 0,
      });
      writeLog(path, logRecords(1, 6));
      const facts = read(path, (log) => log.facts());
      expect(facts).toMatchObject({ firstMs: noonMs + 10_000, days: 1, runs: 1 });
      expect([facts.steps, facts.lastMs]).toEqual([6, noonMs + 60_000]);
      expect(facts.sizeBytes).toBeGreaterThanOrEqual(statSync(path).size);
    }));

  it('can be cut to a span that ends before its second bound', () =>
    withLog((path) => {
      writeLog(path, logRecords(1, 6));
      read(path, (log) => {
        const span = log.span(noonMs + 20_000, noonMs + 40_000);
        expect(span.atMs).toEqual([noonMs + 20_000, noonMs + 30_000]);
        expect(span.heatTodayJ).toEqual([1000, 2000]);
        expect(span.day).toBe('2031-06-21');
        expect(log.span(0, 1)).toEqual({
          day: '1970-01-01',
          atMs: [],
          series: {},
          pumpFraction: [],
          heatTodayJ: [],
          phases: [],
          events: [],
        });
      });
    }));

  it('are a RangeError for a day of which nothing is kept', () =>
    withLog((path) => {
      writeLog(path, [logRecord(1)]);
      read(path, (log) => expect(() => log.day('2031-06-20')).toThrow(RangeError));
    }));
});
