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
    ['is forgotten after it went', [alarm({ active: false, state: 'returned-unacknowledged' })], [], []],
  ];
  it.each(changes)('tell once that an alarm %s', (_, before, after, told) => {
    expect(kinds(withAlarms(...before), withAlarms(...after))).toEqual(
      told.map((kind) => [kind, 'store-hot']),
    );
  });

  it('of the first step of a run are alarms that are new in this run', () => {
    expect(kinds(null, withAlarms(alarm({ sinceMs: 2999 })))).toEqual([]);
    expect(kinds(null, withAlarms(alarm({ sinceMs: 3000 })))).toEqual([['alarm-raised', 'store-hot']]);
  });
});
