import { describe, expect, it } from 'vitest';
import { follow, type Holding, isListed, isSuppressed } from '../../../../controller/engine/alarms/follow.ts';
import type { AlarmMemory, EngineState } from '../../../../controller/engine/state.ts';
import type { AlarmCode } from '../../../../shared-types/alarms.ts';
import { alarmOf, over } from './memories.ts';

const holds = { values: {} };

/** What explains an alarm now, that was explained by `head`. */
const headOf = (
  code: AlarmCode,
  before: EngineState['alarms'] = {},
  holding: Holding = {},
  head: AlarmMemory['head'] = null,
) => follow(code, alarmOf({ head }), before, holding).head;

describe('what explains an alarm', () => {
  it('is a cause that stands, or that is about to come', () => {
    expect(headOf('sensor-failed', { 'pan-sensors-failed': alarmOf() })).toBe('pan-sensors-failed');
    expect(headOf('sensor-failed', {}, { 'pan-sensors-failed': holds })).toBe('pan-sensors-failed');
    expect(headOf('sensor-failed', { 'pan-sensors-failed': alarmOf({ active: false }) })).toBeNull();
    expect(headOf('sensor-failed', { 'flow-low': alarmOf() }, { leak: holds })).toBeNull();
  });

  it('is the likeliest of them, whatever explained it before', () => {
    const both = { 'pan-sensors-failed': alarmOf(), 'all-sensors-silent': alarmOf() };
    expect(headOf('sensor-failed', both, {}, 'pan-sensors-failed')).toBe('all-sensors-silent');
  });

  it('stays what it was once the alarm itself is going', () => {
    expect(headOf('sensor-failed', {}, {}, 'pan-sensors-failed')).toBe('pan-sensors-failed');
    expect(headOf('sensor-failed', {}, { 'sensor-failed': holds }, 'pan-sensors-failed')).toBeNull();
  });

  it('stays what it was for what happened once, for as long as the cause is listed', () => {
    const stays = (before: EngineState['alarms'], code: AlarmCode = 'no-flow') =>
      headOf(code, before, { [code]: holds }, 'output-not-followed');
    const returned = { 'output-not-followed': alarmOf({ active: false }) };
    expect(stays(returned)).toBe('output-not-followed');
    expect([stays({}), stays({ 'output-not-followed': over }), stays(returned, 'not-emptying')]).toEqual([
      ...[null, null, null],
    ]);
  });

  it('leaves the alarm alone where it did not change', () => {
    const alarm = alarmOf({ head: 'all-sensors-silent' });
    expect(follow('sensor-failed', alarm, { 'all-sensors-silent': alarmOf() }, {})).toBe(alarm);
  });
});

describe('an alarm with a known cause', () => {
  it('is not announced while it stands, but where it asks for an act of its own', () => {
    const head = 'dry-running' as const;
    expect([
      isSuppressed('liner-hot', alarmOf({ head })),
      isSuppressed('liner-hot', alarmOf()),
      isSuppressed('liner-hot', alarmOf({ head, active: false })),
      isSuppressed('fill-locked', alarmOf({ head })),
    ]).toEqual([true, false, false, false]);
  });
});

describe('an alarm that is listed', () => {
  it('stands, is to be seen, or is on the shelf', () => {
    expect(isListed(over)).toBe(false);
    expect([
      isListed({ ...over, active: true }),
      isListed({ ...over, acknowledged: false }),
      isListed({ ...over, shelvedUntilMs: 5 }),
    ]).toEqual([true, true, true]);
  });
});
