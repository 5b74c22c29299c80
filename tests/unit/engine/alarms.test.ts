import { describe, expect, it } from 'vitest';
import { circulatingLoop, emptyLoop, Loop, makeSite, restingLoop } from './rig.ts';

const site = makeSite('drain-valve');
const obeyed = { pumpFraction: 0, drainOpen: true, ageMs: 100 };

/** A loop whose device does not follow, until `heal` is called. */
function disobeyed() {
  const loop = emptyLoop(site);
  loop.feedback = { ...obeyed, drainOpen: false };
  loop.run(40);
  return { loop, heal: () => Object.assign(loop, { feedback: obeyed }) };
}

const acknowledge = { kind: 'acknowledge', alarm: 'output-not-followed' } as const;
const shelve = { kind: 'shelve', alarm: 'output-not-followed', minutes: 10 } as const;

describe('an alarm', () => {
  it('comes after its on-delay and goes after its off-delay', () => {
    const loop = emptyLoop(site);
    loop.feedback = { ...obeyed, drainOpen: false };
    loop.run(30);
    expect(loop.alarm('output-not-followed')).toBeUndefined();
    loop.step();
    expect(loop.alarm('output-not-followed')).toMatchObject({
      state: 'unacknowledged',
      active: true,
      sinceMs: loop.nowMs,
      text: 'The device does not do what it is told: drain valve.',
    });
    loop.feedback = obeyed;
    loop.run(30);
    expect(loop.alarm('output-not-followed')).toMatchObject({ active: true });
    loop.step();
    expect(loop.alarm('output-not-followed')).toMatchObject({
      state: 'returned-unacknowledged',
      active: false,
    });
  });

  it('does not come when its condition goes within the delay', () => {
    const loop = emptyLoop(site);
    for (let i = 0; i < 5; i++) {
      loop.feedback = { ...obeyed, drainOpen: false };
      loop.run(25);
      loop.feedback = obeyed;
      loop.run(5);
    }
    expect(loop.alarm('output-not-followed')).toBeUndefined();
  });

  it('is acknowledged while it stands, and is gone when it returns', () => {
    const { loop, heal } = disobeyed();
    expect(loop.ask(acknowledge)).toMatchObject({ accepted: true });
    expect(loop.alarm('output-not-followed')).toMatchObject({ state: 'acknowledged' });
    expect(loop.ask(acknowledge)).toMatchObject({ code: 'nothing-to-do' });
    heal();
    loop.run(40);
    expect(loop.alarm('output-not-followed')).toBeUndefined();
    expect(loop.ask(acknowledge)).toMatchObject({ code: 'no-such-alarm' });
  });

  it('that returned before it was seen waits to be acknowledged', () => {
    const { loop, heal } = disobeyed();
    heal();
    loop.run(40);
    expect(loop.alarm('output-not-followed')).toMatchObject({ state: 'returned-unacknowledged' });
    loop.ask(acknowledge);
    expect(loop.alarm('output-not-followed')).toBeUndefined();
  });

  it('that comes again is unacknowledged again', () => {
    const { loop, heal } = disobeyed();
    loop.ask(acknowledge);
    heal();
    loop.run(40);
    loop.feedback = { ...obeyed, drainOpen: false };
    loop.run(40);
    expect(loop.alarm('output-not-followed')).toMatchObject({ state: 'unacknowledged' });
  });

  it('is shelved for a time that ends by itself', () => {
    const { loop } = disobeyed();
    expect(loop.ask(shelve)).toMatchObject({ accepted: true, leaseMs: 600_000 });
    expect(loop.alarm('output-not-followed')).toMatchObject({
      state: 'shelved',
      active: true,
      shelvedUntilMs: loop.nowMs + 600_000,
    });
    loop.run(595);
    expect(loop.alarm('output-not-followed')).toMatchObject({ state: 'shelved' });
    loop.step();
    expect(loop.alarm('output-not-followed')).toMatchObject({ state: 'unacknowledged' });
  });

  it('that returned while shelved is normal after the shelving', () => {
    const { loop, heal } = disobeyed();
    loop.ask(shelve);
    heal();
    loop.run(590);
    expect(loop.alarm('output-not-followed')).toMatchObject({ state: 'shelved', active: false });
    loop.run(20);
    expect(loop.alarm('output-not-followed')).toBeUndefined();
  });
});

describe('feedback of the device', () => {
  it.each([
    [{ ...obeyed, drainOpen: false }, ': drain valve.'],
    [{ pumpFraction: 1, drainOpen: false, ageMs: 0 }, ': pump.'],
  ])('%o names what differs', (feedback, text) => {
    const loop = emptyLoop(site);
    loop.feedback = feedback;
    expect(loop.run(40).alarm('output-not-followed')?.text).toContain(text);
  });

  it.each([null, { ...obeyed, pumpFraction: 1, ageMs: 60_001 }, { ...obeyed, drainOpen: null }])(
    '%o raises nothing',
    (feedback) => {
      const loop = emptyLoop(site);
      loop.feedback = feedback;
      expect(loop.run(120).last.alarms).toEqual([]);
    },
  );

  it('of a drain that is not fitted does not matter', () => {
    const loop = emptyLoop(makeSite('pump-stop'));
    loop.feedback = { ...obeyed, drainOpen: false };
    expect(loop.run(120).last.alarms).toEqual([]);
  });

  it('is held against the outputs in force before the step', () => {
    const loop = circulatingLoop(site);
    loop.feedback = { pumpFraction: 1, drainOpen: false, ageMs: 100 };
    expect(loop.run(300).last.alarms).toEqual([]);
  });
});

describe('a storm of faults', () => {
  it('has one head alarm when everything is silent', () => {
    const loop = restingLoop(site);
    loop.without(...(Object.keys(site.sensors) as (keyof typeof site.sensors)[])).run(300);
    const heads = loop.last.alarms.filter((alarm) => alarm.follows === undefined);
    expect(heads.map((alarm) => alarm.code)).toEqual(['all-sensors-silent']);
    expect(loop.last.alarms.map((alarm) => alarm.code)).toEqual(
      expect.arrayContaining(['pan-sensors-failed', 'store-sensor-failed', 'sensor-failed']),
    );
  });

  it('names the sensors that failed beside those that have alarms of their own', () => {
    const loop = restingLoop(site).without('ambientC', 'storeTopC', 'storeBottomC').run(200);
    expect(loop.alarm('sensor-failed')).toMatchObject({
      priority: 'when-convenient',
      values: { sensors: 2 },
      text: 'A sensor failed: Store top, Air.',
    });
    expect(loop.alarm('store-sensor-failed')).toBeDefined();
    expect(loop.alarm('pan-sensors-failed')).toBeUndefined();
  });

  it('counts one pan sensor of two as a sensor, not as the pan', () => {
    const loop = restingLoop(site).without('panSheetC').run(200);
    expect(loop.alarm('sensor-failed')?.text).toBe('A sensor failed: Sheet.');
    expect(loop.alarm('pan-sensors-failed')).toBeUndefined();
  });

  it('keeps a healthy loop quiet', () => {
    expect(new Loop(site).run(3600).decisions.every((decision) => decision.alarms.length === 0)).toBe(true);
  });
});
