import { expect, test } from 'vitest';
import { askedName } from '../../../desktop/ui/alarms/asked-name.ts';
import { summaryOf } from '../../../desktop/ui/alarms/summary.ts';
import type { Alarm } from '../../../shared-types/alarms.ts';

const alarm = (change: Partial<Alarm> = {}): Alarm => ({
  code: 'flow-low',
  priority: 'soon',
  state: 'unacknowledged',
  active: true,
  sinceMs: 1000,
  values: {},
  text: '',
  ...change,
});
const shelved = alarm({ state: 'shelved' });
const over = alarm({ state: 'returned-unacknowledged', active: false });

const cases: readonly [string, Alarm[] | undefined, string | undefined, string][] = [
  ['nothing stands', [], undefined, 'Nothing needs you.'],
  ['nobody was heard', undefined, undefined, 'No controller was heard, so nobody knows what stands.'],
  ['what is known is old', [], '5 min', 'Nothing needed you when the controller was last heard, 5 min ago.'],
  ['one stands', [alarm()], undefined, 'One alarm needs you within the day.'],
  [
    'several stand, of two priorities',
    [alarm(), alarm({ state: 'acknowledged' }), alarm({ priority: 'urgent' })],
    '5 min',
    '3 alarms need you: 1 within minutes, 2 within the day.',
  ],
  ['two stand, of one priority', [alarm(), alarm()], undefined, '2 alarms need you within the day.'],
  ['one was put aside', [shelved], undefined, 'Nothing needs you. One is put aside.'],
  [
    'some are over or put aside',
    [over, over, shelved, shelved],
    undefined,
    'Nothing needs you. 2 are over and were not yet seen. 2 are put aside.',
  ],
  ['one is over', [over], undefined, 'Nothing needs you. One is over and was not yet seen.'],
  [
    'a follower stands beside its cause',
    [alarm(), alarm({ state: 'suppressed' })],
    undefined,
    'One alarm needs you within the day.',
  ],
];

test.each(cases)('how things stand when %s', (_what, alarms, old, text) => {
  expect(summaryOf(alarms, old)).toBe(text);
});

test('a request about an alarm is named by its act and the alarm', () => {
  expect(askedName({ kind: 'shelve', alarm: 'leak', minutes: 60 })).toBe('Put aside, The loop loses water');
  expect(askedName({ kind: 'empty' })).toBe('');
});
