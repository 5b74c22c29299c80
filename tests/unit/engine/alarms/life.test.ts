import { describe, expect, it } from 'vitest';
import { isEmpty, updateAlarms } from '../../../../controller/engine/alarms/life.ts';
import {
  type AlarmMemory,
  type EngineState,
  initialState,
  safeOutputs,
} from '../../../../controller/engine/state.ts';
import { nowMs, situationOf, type Told } from '../situations.ts';
import { alarmOf, over } from './memories.ts';

type Alarms = EngineState['alarms'];

const { heat, upkeep } = initialState();
const utcMs = 1_900_000_000_000;
const sixHoursMs = 6 * 3_600_000;

/** The alarms one step on, in a loop that is well but for what is given. */
function update(before: Alarms, state: Partial<EngineState> = {}, told: Told = {}): Alarms {
  const situation = situationOf({ state, told: { panOutletC: 30, storeBottomC: 20, ...told } });
  return updateAlarms(before, { situation, feedback: null, outputsBefore: safeOutputs }, utcMs);
}

/** The liner is hot: an alarm that comes after 60 s and goes after 120 s. */
const hot = { heat: { ...heat, linerHot: true } };
const values = { panC: 30, linerHotC: 72 };
const text = 'The pan is too hot for its liner. The pan is at 30 °C; too hot from 72 °C on.';
const coming = alarmOf({ active: false, acknowledged: true, raisedMs: 0, activeSinceMs: 0, values, text });
const stands = alarmOf({ values, text });

const liner = (alarm: AlarmMemory, state: Partial<EngineState> = {}) =>
  update({ 'liner-hot': alarm }, state)['liner-hot'];

describe('the alarms of a loop that is well', () => {
  it('are none, and stay the same', () => {
    const before = {};
    expect(update(before)).toBe(before);
    expect([isEmpty({}), isEmpty({ leak: over })]).toEqual([true, false]);
  });
});

describe('an alarm whose condition comes', () => {
  it('waits for its on-delay, and says already what it will', () => {
    const { text: said, ...begun } = update({}, hot)['liner-hot'] as AlarmMemory;
    const { text: _, ...expected } = coming;
    expect(begun).toEqual({ ...expected, changingMs: nowMs });
    expect(said).toMatch(/The pan is at 30 °C; too hot from 72 °C on\.$/);
  });

  it('is left alone while it waits and says the same', () => {
    const began = update({}, hot);
    expect(update(began, hot)).toBe(began);
    const waiting = { ...(began['liner-hot'] as AlarmMemory), changingMs: nowMs - 59_999 };
    expect(liner(waiting, hot)).toBe(waiting);
    const other = liner({ ...waiting, text: 'Something else.', values: {} }, hot);
    expect(other).toEqual({ ...waiting, values });
  });

  it('is raised after its on-delay, to be seen', () => {
    expect(liner({ ...coming, changingMs: nowMs - 60_000 }, hot)).toMatchObject({
      ...{ changingMs: null, active: true, acknowledged: false },
      ...{ raisedMs: utcMs, activeSinceMs: nowMs, repeats: 0, returnedMs: null, values },
    });
  });

  it('is raised at once where it has no delay', () => {
    const poor = update({}, { upkeep: { ...upkeep, poorContactK: 3 } });
    expect(poor['poor-contact']).toMatchObject({ active: true, values: { excessK: 3 } });
  });

  it('repeats itself within six hours of its return', () => {
    const again = (agoMs: number) =>
      liner({ ...coming, changingMs: 0, returnedMs: nowMs - agoMs, repeats: 2 }, hot)?.repeats;
    expect([again(sixHoursMs - 1), again(sixHoursMs)]).toEqual([3, 0]);
  });

  it('is forgotten when its condition goes within the delay, but for its last return', () => {
    const alarm = { ...coming, changingMs: nowMs - 5000 };
    expect(update({ 'liner-hot': alarm })).toEqual({});
    expect(liner({ ...alarm, returnedMs: nowMs - 5000 })).toEqual({ ...coming, returnedMs: nowMs - 5000 });
  });
});

describe('an alarm whose condition goes', () => {
  it('waits for its off-delay, and keeps what it said', () => {
    expect(liner(stands)).toEqual({ ...stands, changingMs: nowMs });
    const waiting = { ...stands, changingMs: nowMs - 119_999 };
    expect(liner(waiting)).toBe(waiting);
    expect(liner(waiting, hot)).toMatchObject({ active: true, changingMs: null });
  });

  it('returns after its off-delay', () => {
    const going = { ...stands, changingMs: nowMs - 120_000, head: 'store-hot' as const };
    const returned = { changingMs: null, active: false, returnedMs: nowMs, head: null };
    const unexplained = { ...going, head: null };
    expect(liner(unexplained)).toEqual({ ...stands, ...returned });
    expect(liner({ ...unexplained, acknowledged: true })).toEqual({
      ...{ ...stands, ...returned, acknowledged: true },
    });
    expect(liner(going)).toMatchObject({ ...returned, acknowledged: true });
  });

  it('takes longer where it repeats itself', () => {
    const going = (forMs: number) => liner({ ...stands, repeats: 1, changingMs: nowMs - forMs })?.active;
    expect([going(599_999), going(600_000)]).toEqual([true, false]);
  });

  it('is remembered for six hours', () => {
    const gone = { ...over, returnedMs: nowMs - sixHoursMs + 1 };
    const before = { 'liner-hot': gone };
    expect(update(before)).toBe(before);
    expect(update({ 'liner-hot': { ...gone, returnedMs: nowMs - sixHoursMs } })).toEqual({});
  });
});

describe('an alarm that stands', () => {
  it('is held by a deadband, which one that is gone is not', () => {
    const at79 = (alarm: AlarmMemory) =>
      update({ 'store-hot': alarm }, {}, { storeBottomC: 79 })['store-hot'];
    expect(at79(alarmOf())?.changingMs).toBeNull();
    const unseen = alarmOf({ active: false });
    expect(at79(unseen)).toBe(unseen);
  });

  it('comes off the shelf when its time is over', () => {
    const shelved = (untilMs: number) =>
      liner({ ...stands, shelvedUntilMs: untilMs, shelvedUntilUtcMs: 5, acknowledged: true }, hot);
    expect(shelved(nowMs + 1)).toMatchObject({ shelvedUntilMs: nowMs + 1, acknowledged: true });
    expect(shelved(nowMs)).toMatchObject({
      ...{ shelvedUntilMs: null, shelvedUntilUtcMs: null, acknowledged: false },
    });
  });

  it('is explained by a cause that comes', () => {
    const told = { storeBottomC: 80 };
    expect(update({ 'liner-hot': stands }, hot, told)['liner-hot']?.head).toBe('store-hot');
  });
});
