import { describe, expect, it } from 'vitest';
import { acknowledge, offShelf, shelve, unshelve } from '../../../../controller/engine/alarms/by-hand.ts';
import type { AlarmMemory } from '../../../../controller/engine/state.ts';
import { alarmOf, over } from './memories.ts';

const shelved = { shelvedUntilMs: 900, shelvedUntilUtcMs: 1900 };
const other = alarmOf({ text: 'Another one.' });
const among = (alarm: AlarmMemory) => ({ 'sensor-failed': alarm, 'flow-low': other });

describe('an alarm that a person has seen', () => {
  const seen = (alarm: AlarmMemory) => acknowledge(among(alarm), 'sensor-failed');

  it('is acknowledged, and no other', () => {
    expect(seen(alarmOf())).toEqual(among(alarmOf({ acknowledged: true })));
  });

  it('is none where nothing is listed', () => {
    expect([acknowledge({}, 'sensor-failed'), seen(over)]).toEqual(['no-such-alarm', 'no-such-alarm']);
  });

  it.each<[string, Partial<AlarmMemory>]>([
    ['was seen before', { acknowledged: true }],
    ['is on the shelf', shelved],
    ['follows from another', { head: 'all-sensors-silent' }],
  ])('needs no seeing where it %s', (_, changes) => {
    expect(seen(alarmOf(changes))).toBe('nothing-to-do');
  });
});

describe('an alarm that a person puts aside', () => {
  const aside = (alarm: AlarmMemory) =>
    shelve(among(alarm), 'sensor-failed', 600, { runMs: 300, nowMs: 1300 });

  it('is on the shelf for its time, by both clocks', () => {
    expect(aside(alarmOf())).toEqual(among(alarmOf(shelved)));
  });

  it('is none where nothing is listed', () => {
    const now = { runMs: 300, nowMs: 1300 };
    expect([shelve({}, 'sensor-failed', 600, now), aside(over)]).toEqual(['no-such-alarm', 'no-such-alarm']);
  });

  it('is not one that is urgent', () => {
    const now = { runMs: 300, nowMs: 1300 };
    expect(shelve({ 'frost-danger': alarmOf() }, 'frost-danger', 600, now)).toBe('not-shelvable');
  });
});

describe('an alarm that a person takes off the shelf', () => {
  const off = (alarm: AlarmMemory) => unshelve(among(alarm), 'sensor-failed');

  it('is to be seen anew while it stands, and is over where it does not', () => {
    expect(off(alarmOf({ ...shelved, acknowledged: true }))).toEqual(among(alarmOf()));
    expect(off(alarmOf({ ...shelved, active: false }))).toEqual(among(over));
    expect(offShelf(alarmOf(shelved))).toEqual(alarmOf());
  });

  it('is none where nothing is listed, and stays where it is not on the shelf', () => {
    expect([unshelve({}, 'sensor-failed'), off(over)]).toEqual(['no-such-alarm', 'no-such-alarm']);
    expect(off(alarmOf())).toBe('nothing-to-do');
  });
});
