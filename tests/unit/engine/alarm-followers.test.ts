import { describe, expect, it } from 'vitest';
import { alarmCatalogue } from '../../../shared-types/alarm-catalogue.ts';
import { type AlarmCode, alarmCodes } from '../../../shared-types/alarms.ts';
import { Alarm } from './alarm-rig.ts';
import { allSensors, circulatingLoop, emptyLoop, type Loop, makeSite, restingLoop } from './rig.ts';

const site = makeSite('drain-valve');
const sensors = Object.keys(site.sensors) as (keyof typeof site.sensors)[];

const stateOf = (loop: Loop, code: AlarmCode) => loop.alarm(code)?.state;

/** Codes in the order in which they were announced. */
function announced({ decisions }: Loop): AlarmCode[] {
  const told: AlarmCode[] = [];
  let before: readonly string[] = [];
  for (const { alarms } of decisions) {
    const now = alarms.filter(({ state }) => state === 'unacknowledged').map(({ code }) => code);
    told.push(...now.filter((code) => !before.includes(code)));
    before = now;
  }
  return told;
}

describe('an alarm that follows from another', () => {
  it('is listed under it and suppressed, even where its own delay is the shorter', () => {
    const loop = restingLoop(site)
      .without(...sensors)
      .run(300);
    expect(announced(loop)).toEqual(['all-sensors-silent']);
    for (const code of ['pan-sensors-failed', 'store-sensor-failed'] as const)
      expect(loop.alarm(code)).toMatchObject({ state: 'suppressed', follows: 'all-sensors-silent' });
    expect(loop.alarm('sensor-failed')).toMatchObject({ state: 'suppressed' });
    expect(loop.ask({ kind: 'acknowledge', alarm: 'pan-sensors-failed' })?.code).toBe('nothing-to-do');
  });

  it('is announced when its cause is gone and it still holds', () => {
    const loop = restingLoop(site);
    const { values } = loop;
    loop.without(...sensors).run(300);
    loop.values = values;
    loop.without('storeBottomC').run(25);
    expect(stateOf(loop, 'store-sensor-failed')).toBe('suppressed');
    loop.run(20);
    expect(stateOf(loop, 'all-sensors-silent')).toBe('returned-unacknowledged');
    expect(loop.alarm('store-sensor-failed')).toMatchObject({ state: 'unacknowledged', active: true });
    expect(loop.alarm('store-sensor-failed')).not.toHaveProperty('follows');
  });

  it('is normal when it returns, without having to be seen', () => {
    const loop = restingLoop(site);
    const { values } = loop;
    loop.without(...sensors).run(300);
    loop.values = values;
    loop.run(180);
    expect(loop.last.alarms.map(({ code, state }) => [code, state])).toEqual([
      ['all-sensors-silent', 'returned-unacknowledged'],
    ]);
    expect(announced(loop)).toEqual(['all-sensors-silent']);
  });

  it('is suppressed from when its cause comes, and is not to be seen again if it was', () => {
    const loop = restingLoop(site);
    const { values } = loop;
    loop.without('storeBottomC').run(60);
    loop.ask({ kind: 'acknowledge', alarm: 'store-sensor-failed' });
    loop.without(...sensors).run(120);
    expect(stateOf(loop, 'store-sensor-failed')).toBe('suppressed');
    loop.values = values;
    loop.without('storeBottomC').run(60);
    expect(stateOf(loop, 'store-sensor-failed')).toBe('acknowledged');
  });

  it('is announced beside its cause where it asks for an act of its own', () => {
    const loop = circulatingLoop(makeSite('drain-valve', allSensors)).run(60).set({ flowLMin: 0 });
    loop.until('emptying').set({ panLevelMm: 0 }).until('empty').set({ panOutletC: 40, panSheetC: 40 });
    loop.until('filling').set({ flowLMin: 20 }).until('stopped').run(20);
    expect(loop.alarm('fill-locked')).toMatchObject({ state: 'unacknowledged', follows: 'fill-failed' });
  });

  it('stands behind its cause, the most pressing cause first, then the first', () => {
    const loop = restingLoop(makeSite('drain-valve', allSensors));
    loop.set({ storeTopC: 81, pumpPowerW: { value: null, ageMs: 100, fault: 'open-circuit' } }).run(200);
    loop.feedback = { pumpFraction: 1, drainOpen: false, ageMs: 0 };
    loop.run(60);
    const heads = loop.last.alarms.map(({ code }) => code);
    expect(heads).toEqual(['store-hot', 'output-not-followed', 'sensor-failed']);
    expect(loop.last.alarms.map(({ priority }) => priority)).toEqual(['soon', 'soon', 'when-convenient']);
  });
});

describe('a catalogue of alarms', () => {
  it.each(alarmCodes.filter((code) => alarmCatalogue[code].priority === 'urgent'))(
    'never keeps the urgent %s to itself',
    (code) => {
      const { causes, besideCauses } = alarmCatalogue[code];
      expect(causes.length === 0 || besideCauses === true).toBe(true);
    },
  );
});

describe('an urgent alarm', () => {
  it('is not put on the shelf', () => {
    const loop = restingLoop(makeSite('corner')).set({ panOutletC: 3 }).run(120);
    expect(stateOf(loop, 'frost-danger')).toBe('unacknowledged');
    expect(loop.ask({ kind: 'shelve', alarm: 'frost-danger', minutes: 60 })).toMatchObject({
      accepted: false,
      code: 'not-shelvable',
    });
    expect(stateOf(loop, 'frost-danger')).toBe('unacknowledged');
  });
});

describe('an alarm that repeats itself', () => {
  /** Times at which it was raised [s], while it holds for one and is gone for another time by turns. */
  function raisings(goneS: number, hours: number): number[] {
    const { loop } = new Alarm();
    const times = new Set<number>();
    const beganMs = loop.nowMs;
    const turnS = goneS + 60;
    for (let s = 0; s < hours * 3600; s += 10) {
      loop.feedback = { pumpFraction: 0, drainOpen: s % turnS >= 60, ageMs: 100 };
      const alarm = loop.step(10).alarm('output-not-followed');
      if (alarm?.active === true) times.add((alarm.sinceMs - beganMs) / 1000);
    }
    return [...times];
  }

  it('is raised again once, then stands until it was gone for ten minutes', () => {
    expect(raisings(120, 3)).toEqual([40, 220]);
  });
  it('is raised a third time, then stands until it was gone for an hour', () => {
    expect(raisings(900, 12)).toEqual([40, 1000, 1960]);
  });
  it('is raised anew each time that it was gone for longer', () => {
    expect(raisings(4000, 5)).toHaveLength(5);
  });
  it('is forgotten after six hours', () => {
    const alarm = new Alarm();
    alarm.raise();
    alarm.acknowledge();
    alarm.letReturn();
    // It returned 30 s after it was healed, 3700 s ago.
    alarm.loop.run(21_560 - 3670, 10);
    expect(alarm.loop.state.alarms).not.toEqual({});
    alarm.loop.run(80, 10);
    expect(alarm.loop.state.alarms).toEqual({});
  });
  it('and ends by a proof or an act of a person, ends at once', () => {
    const loop = emptyLoop(site);
    const lock = () => {
      loop.state = { ...loop.state, failure: { count: 2, cause: 'fill-failed' } };
      loop.run(10);
      expect(stateOf(loop, 'fill-locked')).toBe('unacknowledged');
      loop.ask({ kind: 'automatic' });
      expect(loop.alarm('fill-locked')?.active).toBe(false);
    };
    lock();
    lock();
    lock();
  });
});

describe('the lock, which latches', () => {
  it('stays when it is acknowledged and the cause is gone, until a person resets it', () => {
    const loop = emptyLoop(site);
    loop.state = { ...loop.state, failure: { count: 2, cause: 'dry-running' } };
    loop.run(10);
    expect(loop.ask({ kind: 'acknowledge', alarm: 'fill-locked' })?.code).toBe('accepted');
    expect(stateOf(loop.run(7200, 50), 'fill-locked')).toBe('acknowledged');
    expect(loop.ask({ kind: 'automatic' })?.code).toBe('accepted');
    expect(loop.alarm('fill-locked')).toBeUndefined();
  });
});
