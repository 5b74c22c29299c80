import { describe, expect, it } from 'vitest';
import { listAlarms } from '../../../../controller/engine/alarms/list.ts';
import type { EngineState } from '../../../../controller/engine/state.ts';
import { alarmOf, over } from './memories.ts';

type Alarms = EngineState['alarms'];

const codes = (alarms: Alarms) => listAlarms(alarms).map(({ code }) => code);
const stateOf = (alarm: Alarms['liner-hot']) =>
  listAlarms(alarm === undefined ? {} : { 'liner-hot': alarm }).map(({ state }) => state);

describe('the alarms that people see', () => {
  it('are none where all are over', () => {
    expect([listAlarms({}), listAlarms({ leak: over })]).toEqual([[], []]);
  });

  it('are listed once for as long as no alarm changes', () => {
    const alarms = { leak: alarmOf() };
    expect(listAlarms(alarms)).toBe(listAlarms(alarms));
    expect(listAlarms({ ...alarms, 'liner-hot': alarmOf() })).toHaveLength(2);
  });

  it('are told in full', () => {
    const alarm = alarmOf({ values: { panC: 80 }, text: 'Hot.' });
    const seen = {
      ...{ code: 'liner-hot', priority: 'soon', state: 'unacknowledged', active: true },
      ...{ sinceMs: 70, values: { panC: 80 }, text: 'Hot.' },
    };
    expect(listAlarms({ 'liner-hot': alarm })).toEqual([seen]);
    const shelved = { ...alarm, shelvedUntilMs: 5, shelvedUntilUtcMs: 6 };
    expect(listAlarms({ 'liner-hot': shelved })).toEqual([{ ...seen, state: 'shelved', shelvedUntilMs: 6 }]);
  });

  it('have the state that a person is to know', () => {
    const head = 'store-hot' as const;
    expect([
      stateOf(alarmOf()),
      stateOf(alarmOf({ acknowledged: true })),
      stateOf(alarmOf({ active: false })),
      stateOf(alarmOf({ active: false, shelvedUntilMs: 5 })),
      stateOf(alarmOf({ head })),
    ]).toEqual([
      ['unacknowledged'],
      ['acknowledged'],
      ['returned-unacknowledged'],
      ['shelved'],
      ['suppressed'],
    ]);
  });
});

describe('the order of the alarms', () => {
  it('puts what stands before what is over, then the most pressing, then the first', () => {
    const gone = alarmOf({ active: false, activeSinceMs: 1 });
    const alarms: Alarms = {
      'frost-danger': gone,
      'flow-low': alarmOf({ activeSinceMs: 2 }),
      'poor-contact': alarmOf({ activeSinceMs: 1 }),
      'store-hot': alarmOf({ activeSinceMs: 9 }),
      leak: alarmOf({ activeSinceMs: 8 }),
      'not-emptying': alarmOf({ activeSinceMs: 10 }),
    };
    expect(codes(alarms)).toEqual([
      ...['not-emptying', 'leak', 'store-hot', 'poor-contact', 'flow-low', 'frost-danger'],
    ]);
  });

  it('puts what follows behind its cause, and what follows from that behind it', () => {
    const alarms: Alarms = {
      'all-sensors-silent': alarmOf({ activeSinceMs: 9 }),
      'pan-sensors-failed': alarmOf({ head: 'all-sensors-silent', activeSinceMs: 3 }),
      'sensor-failed': alarmOf({ head: 'pan-sensors-failed', activeSinceMs: 1 }),
      'store-sensor-failed': alarmOf({ head: 'all-sensors-silent', activeSinceMs: 2 }),
      leak: alarmOf({ activeSinceMs: 10 }),
    };
    expect(listAlarms(alarms).map(({ code, follows }) => [code, follows])).toEqual([
      ['all-sensors-silent', undefined],
      ['store-sensor-failed', 'all-sensors-silent'],
      ['pan-sensors-failed', 'all-sensors-silent'],
      ['sensor-failed', 'pan-sensors-failed'],
      ['leak', undefined],
    ]);
  });

  it('puts nothing behind a cause that is not listed', () => {
    const follower = alarmOf({ head: 'all-sensors-silent' });
    expect(listAlarms({ 'pan-sensors-failed': follower })[0]).not.toHaveProperty('follows');
    const seen = listAlarms({ 'pan-sensors-failed': follower, 'all-sensors-silent': over });
    expect(seen).toMatchObject([{ code: 'pan-sensors-failed', state: 'suppressed' }]);
    expect(seen[0]).not.toHaveProperty('follows');
  });
});
