import { describe, expect, it } from 'vitest';
import { eventsBetween } from '../../../../controller/log/events.ts';
import type { Alarm } from '../../../../shared-types/alarms.ts';
import type { Decision } from '../../../../shared-types/engine.ts';
import { fakeDecision } from '../../../support/fake-engine.ts';
import { logRecord } from '../../../support/log-records.ts';

const { input } = logRecord(1);
const decision = (changes: Partial<Decision> = {}) => fakeDecision({ ...input, nowMs: 5000 }, 0, changes);
const alarm = (changes: Partial<Alarm> = {}): Alarm => ({
  code: 'store-hot',
  priority: 'soon',
  state: 'unacknowledged',
  active: true,
  sinceMs: 4000,
  values: { storeTopC: 61 },
  text: 'The store is hot.',
  ...changes,
});
const withAlarms = (...alarms: Alarm[]) => decision({ alarms });
const kinds = (before: Decision | null, after: Decision) =>
  eventsBetween(before, after, 3000).map(({ kind, values }) => [kind, values['alarm']]);

describe('events between two decisions', () => {
  it('are none when nothing changed', () => {
    expect(eventsBetween(withAlarms(alarm()), withAlarms(alarm()), 0)).toEqual([]);
  });

  it('tell a change of phase with its reason and numbers', () => {
    expect(eventsBetween(decision({ phase: 'resting' }), decision(), 0)).toEqual([
      {
        atMs: 5000,
        kind: 'phase-changed',
        text: 'It is warm.',
        values: { differenceK: 8, from: 'resting', to: 'circulating', reason: 'circulating-for-heat' },
      },
    ]);
  });

  const shelved = alarm({ state: 'shelved', shelvedUntilMs: 9000 });
  const changes: [string, Alarm[], Alarm[], string[]][] = [
    ['comes', [], [alarm()], ['alarm-raised']],
    [
      'comes again',
      [alarm({ active: false, state: 'returned-unacknowledged' })],
      [alarm()],
      ['alarm-raised'],
    ],
    ['goes', [alarm()], [], ['alarm-returned']],
    [
      'goes and waits to be seen',
      [alarm()],
      [alarm({ active: false, state: 'returned-unacknowledged' })],
      ['alarm-returned'],
    ],
    ['is seen', [alarm()], [alarm({ state: 'acknowledged' })], ['alarm-acknowledged']],
    ['is shelved', [alarm()], [shelved], ['alarm-shelved']],
    ['comes off the shelf', [shelved], [alarm()], ['alarm-unshelved']],
    [
      'is seen again off the shelf',
      [shelved],
      [alarm({ state: 'acknowledged' })],
      ['alarm-acknowledged', 'alarm-unshelved'],
    ],
    [
      'is seen after it went',
      [alarm({ active: false, state: 'returned-unacknowledged' })],
      [],
      ['alarm-acknowledged'],
    ],
    ['comes off the shelf after it went', [{ ...shelved, active: false }], [], ['alarm-unshelved']],
    ['goes while it is shelved', [shelved], [{ ...shelved, active: false }], ['alarm-returned']],
  ];
  it.each(changes)('tell once that an alarm %s', (_, before, after, told) => {
    expect(kinds(withAlarms(...before), withAlarms(...after))).toEqual(
      told.map((kind) => [kind, 'store-hot']),
    );
  });

  it('say until when an alarm is shelved', () => {
    expect(eventsBetween(withAlarms(alarm()), withAlarms(shelved), 0)[0]?.values).toEqual({
      storeTopC: 61,
      alarm: 'store-hot',
      priority: 'soon',
      shelvedUntilMs: 9000,
    });
  });

  const run = (step: 'draining' | 'done' | 'ended') =>
    decision({
      commissioning: {
        step,
        text: `The run: ${step}.`,
        findings: [{ check: 'fill-time', result: 'passed', text: 'The pan fills in 4 min.' }],
      },
    });

  it('tell once how a commissioning run ended, with its results', () => {
    expect(eventsBetween(run('draining'), run('done'), 0)).toEqual([
      { atMs: 5000, kind: 'commissioning-done', text: 'The run: done.', values: { 'fill-time': 'passed' } },
    ]);
    expect(eventsBetween(run('draining'), run('ended'), 0).map(({ kind }) => kind)).toEqual([
      'commissioning-ended',
    ]);
    expect(eventsBetween(decision(), run('draining'), 0)).toEqual([]);
    expect(eventsBetween(run('done'), run('done'), 0)).toEqual([]);
    expect(eventsBetween(null, run('done'), 0)).toEqual([]);
  });

  it('of the first step of a run are alarms that are new in this run', () => {
    expect(kinds(null, withAlarms(alarm({ sinceMs: 2999 })))).toEqual([]);
    expect(kinds(null, withAlarms(alarm({ sinceMs: 3000 })))).toEqual([['alarm-raised', 'store-hot']]);
  });
});
