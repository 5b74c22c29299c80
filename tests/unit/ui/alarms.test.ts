import { describe, expect, test } from 'vitest';
import { alarmGroups } from '../../../desktop/ui/live/alarm-tree.ts';
import { newAlarms, standing } from '../../../desktop/ui/store/new-alarms.ts';
import type { Alarm } from '../../../shared-types/alarms.ts';

const alarm = (code: Alarm['code'], change: Partial<Alarm> = {}): Alarm => ({
  code,
  priority: 'soon',
  state: 'unacknowledged',
  active: true,
  sinceMs: 1000,
  values: {},
  text: code,
  ...change,
});

const codes = (alarms: readonly Alarm[]) => alarms.map((one) => one.code);

describe('alarms in groups', () => {
  test('fold followers under their first cause, also at second hand', () => {
    const groups = alarmGroups([
      alarm('fill-failed', { follows: 'dry-running' }),
      alarm('dry-running', { follows: 'output-not-followed' }),
      alarm('output-not-followed'),
    ]);
    expect(groups.map((group) => group.head.code)).toEqual(['output-not-followed']);
    expect(codes(groups[0]?.followers ?? [])).toEqual(['fill-failed', 'dry-running']);
  });
  test('stand for themselves when their cause is not there', () => {
    expect(alarmGroups([alarm('fill-failed', { follows: 'dry-running' })])).toHaveLength(1);
  });
  test('come to an end when they follow each other in a ring', () => {
    const groups = alarmGroups([
      alarm('fill-failed', { follows: 'dry-running' }),
      alarm('dry-running', { follows: 'fill-failed' }),
    ]);
    expect(groups.length).toBeLessThanOrEqual(2);
  });
  test('put active before past, urgent before the rest, old before new', () => {
    const groups = alarmGroups([
      alarm('store-hot', { active: false, priority: 'urgent' }),
      alarm('sensor-failed', { sinceMs: 2000 }),
      alarm('liner-hot', { sinceMs: 1500 }),
      alarm('frost-danger', { priority: 'urgent', sinceMs: 9000 }),
    ]);
    expect(groups.map((group) => group.head.code)).toEqual([
      'frost-danger',
      'liner-hot',
      'sensor-failed',
      'store-hot',
    ]);
  });
});

describe('what is announced', () => {
  test('is what was not there before', () => {
    expect(codes(newAlarms([alarm('store-hot')], [alarm('store-hot'), alarm('frost-danger')]))).toEqual([
      'frost-danger',
    ]);
  });
  test('is an alarm again when it was raised again', () => {
    expect(codes(newAlarms([alarm('store-hot')], [alarm('store-hot', { sinceMs: 5000 })]))).toEqual([
      'store-hot',
    ]);
    expect(codes(newAlarms([alarm('store-hot', { active: false })], [alarm('store-hot')]))).toEqual([
      'store-hot',
    ]);
  });
  test('is nothing that another explains, nothing past, nothing shelved, nothing that was seen', () => {
    const after = [
      alarm('fill-failed', { follows: 'dry-running', state: 'suppressed' }),
      alarm('store-hot', { active: false }),
      alarm('liner-hot', { state: 'shelved' }),
      alarm('dry-running', { state: 'acknowledged' }),
    ];
    expect(newAlarms([], after)).toEqual([]);
    expect(codes(standing(after))).toEqual(['dry-running']);
  });
  test('is an alarm that asks for an act of its own beside its cause, and one whose cause is gone', () => {
    const danger = alarm('frost-danger', { follows: 'not-emptying' });
    expect(codes(newAlarms([], [danger]))).toEqual(['frost-danger']);
    const follower = alarm('fill-failed', { follows: 'dry-running', state: 'suppressed' });
    expect(codes(newAlarms([follower], [alarm('fill-failed')]))).toEqual(['fill-failed']);
  });
});
