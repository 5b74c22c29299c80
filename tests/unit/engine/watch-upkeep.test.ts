import { describe, expect, it } from 'vitest';
import { initialState } from '../../../controller/engine/index.ts';
import { contactSample } from '../../../controller/engine/watch/contact.ts';
import { judgeContact } from '../../../controller/engine/watch/judge-contact.ts';
import { calmFlow, newUpkeep, noSums, type UpkeepMemory } from '../../../controller/engine/watch/memory.ts';
import {
  isDrawnLow,
  lacksForFill,
  neededMm,
  reservoirLeakMm,
  shortSince,
  updateReservoir,
} from '../../../controller/engine/watch/reservoir.ts';
import { restLeakMmH, updateRestBook } from '../../../controller/engine/watch/rest-level.ts';
import { hasSunk } from '../../../controller/engine/watch/update.ts';
import { circulatingLoop, emptyLoop, restingLoop } from './rig.ts';
import {
  contactLoop,
  fillingReservoir,
  level,
  reservoirLoop,
  reservoirSite,
  type Scene,
  sinkingLoop,
  situationOf,
} from './watch-rig.ts';

const nowMs = 3_600_000;
const since = (name: string, forMs: number) => ({ phase: { name, sinceMs: nowMs - forMs } });

describe('the book of a resting pan', () => {
  const book = (
    before: Partial<UpkeepMemory>,
    panLevelMm: number | null,
    forMs: number,
    state: object = {},
  ) =>
    updateRestBook(
      { ...newUpkeep, ...before },
      situationOf({
        state: { ...since('resting', forMs), ...state },
        values: panLevelMm === null ? {} : { panLevelMm },
      }),
    );

  it('is opened after a quarter of an hour, at the smoothed level', () => {
    expect(book({}, 40, 899_999)).toEqual({ ...newUpkeep, restMm: 40 });
    expect(book({ restMm: 40 }, 40, 900_000)).toMatchObject({ restFromMm: 40, restFromMs: nowMs });
    expect(book({ restMm: 40 }, 41, 1000).restMm).toBeCloseTo(40 + 5 / 305, 9);
  });

  it('is closed after half an hour, and opened anew', () => {
    const open = { restMm: 39, restFromMm: 40, restFromMs: nowMs - 1_799_999 };
    expect(book(open, 39, 3_000_000)).toMatchObject({ ...open, lostMm: 0, lostMs: 0 });
    const full = { ...open, restFromMs: nowMs - 1_800_000, lostMm: 2, lostMs: 1000 };
    expect(book(full, 39, 3_000_000)).toMatchObject({
      ...{ restMm: 39, restFromMm: 39, restFromMs: nowMs },
      ...{ lostMm: 3, lostMs: 1_801_000 },
    });
  });

  it.each([
    ['the pump starts', since('circulating', 0), 39],
    ['the level cannot be read', {}, null],
    ['the pan is no longer full', { water: { level: 'part' } }, 20],
    ['the pump is seen to run', { flow: { ...calmFlow, runsOnMs: 1 } }, 39],
  ])('is closed when %s', (_, state, mm) => {
    const open = { restMm: 39, restFromMm: 40, restFromMs: nowMs - 600_000 };
    expect(book(open, mm, 3_000_000, state)).toMatchObject({
      ...{ restMm: null, restFromMm: null },
      ...{ lostMm: 1, lostMs: 600_000 },
    });
    expect(book({ restMm: 39 }, mm, 3_000_000, state)).toEqual(newUpkeep);
  });

  it('forgets half of it after six hours', () => {
    const open = { restMm: 39, restFromMm: 40, restFromMs: nowMs - 600_000 };
    const kept = book({ ...open, lostMm: 3, lostMs: 21_000_000 }, null, 3_000_000);
    expect(kept).toMatchObject({ lostMm: 4, lostMs: 21_600_000 });
    expect(book({ ...open, lostMm: 3, lostMs: 21_000_001 }, null, 3_000_000)).toMatchObject({
      lostMm: 2,
      lostMs: 10_800_000.5,
    });
  });

  it.each([
    [0.8, 5_400_000, 0.8 / 1.5],
    [0.79, 5_400_000, null],
    [0.8, 5_399_999, null],
    [0.9, 10_800_000, 0.3],
    [0.89, 10_800_000, null],
  ])('tells of a leak: %d mm in %d ms', (lostMm, lostMs, rateMmH) => {
    const told = restLeakMmH({ ...newUpkeep, lostMm, lostMs });
    if (rateMmH === null) expect(told).toBeNull();
    else expect(told).toBeCloseTo(rateMmH, 12);
  });

  it('raises the alarm within hours of rest, and none for a pan that holds', () => {
    expect(sinkingLoop(0.7, 3).alarm('leak')?.text).toBe(
      'The loop loses water. The resting pan sinks by 0.7 mm an hour.',
    );
    expect(sinkingLoop(0.2, 4).alarm('leak')).toBeUndefined();
  });
});

describe('a full pan that falls while the pump runs', () => {
  it('has lost its water after a minute', () => {
    const loop = circulatingLoop(level).run(60).set({ panLevelMm: 25 }).run(60);
    expect(loop.phase).toBe('circulating');
    loop.run(10);
    expect([loop.phase, loop.why]).toEqual(['emptying', 'water-lost']);
    expect(loop.alarm('water-lost')).toMatchObject({ active: true });
  });

  it('counts for as long as the pump is to run', () => {
    const flow = { ...calmFlow, sinksMs: nowMs - 60_000 };
    expect(hasSunk(situationOf({ state: { flow } }))).toBe(true);
    expect(hasSunk(situationOf({ state: { flow: { ...flow, sinksMs: nowMs - 59_999 } } }))).toBe(false);
    expect(hasSunk(situationOf({ state: { flow, ...since('filling', 0) } }))).toBe(true);
    expect(hasSunk(situationOf({ state: { flow, ...since('resting', 0) } }))).toBe(false);
  });
});

describe('a pan that stays empty while it fills', () => {
  it('has lost its water a minute after 0.4 of it was pumped', () => {
    const loop = emptyLoop(level).set({ panOutletC: 40, panSheetC: 40, panLevelMm: 1 });
    loop.settings = { ...loop.settings, fillTimeS: 1500, fillTimeoutS: 2100 };
    loop.until('filling').set({ flowLMin: 20 }).run(535);
    expect(loop.phase).toBe('filling');
    expect(loop.state.meter.filledL).toBeGreaterThan(160);
    loop.run(15);
    expect(loop.decisions.map(({ reasons }) => reasons.phase.code)).toContain('water-lost');
  });
});

describe('a drain-back reservoir', () => {
  const at = (scene: Scene) => situationOf({ site: reservoirSite, ...scene });
  const judge = (upkeep: Partial<UpkeepMemory>, learnt: object, scene: Scene) =>
    updateReservoir({ upkeep: { ...newUpkeep, ...upkeep }, learnt: learnt as never }, at(scene));
  const mm = (reservoirLevelMm: number) => ({ values: { reservoirLevelMm } });

  it('is drawn low when the running pump has less than 30 mm for 10 s', () => {
    expect(shortSince(4, at(mm(29.9)))).toBe(4);
    expect(shortSince(4, at(mm(30)))).toBeNull();
    expect(shortSince(null, at(mm(29.9)))).toBe(nowMs);
    expect(shortSince(4, at({ ...mm(0), state: since('resting', 0) }))).toBeNull();
    expect(shortSince(4, situationOf(mm(0)))).toBeNull();
    const low = (shortMs: number, state: object = {}) =>
      isDrawnLow(at({ state: { flow: { ...calmFlow, shortMs }, ...state } }));
    expect([low(3_590_000), low(3_590_001), low(0, since('empty', 0))]).toEqual([true, false, false]);
  });

  it('needs what a fill takes, and 30 mm above the suction; more where that was not enough', () => {
    const need = (upkeepMm: number | null, learnt: object) =>
      neededMm(at({ state: { upkeep: { ...newUpkeep, neededMm: upkeepMm }, learnt } }));
    expect(need(null, {})).toBeNull();
    expect(need(500, {})).toBe(500);
    expect(need(null, { reservoirDropMm: 400 })).toBe(430);
    expect(need(500, { reservoirDropMm: 400 })).toBe(500);
    expect(need(420, { reservoirDropMm: 400 })).toBe(430);
  });

  it.each([
    ['empty', 430, false],
    ['empty', 429.9, true],
    ['emptying', 429.9, true],
    ['resting', 429.9, false],
    ['filling', 429.9, false],
    ['empty', null, false],
  ])('of a pan that is %s lacks water for a fill at %s mm: %s', (name, reservoirMm, lacks) => {
    const state = {
      ...since(name, 0),
      learnt: { reservoirDropMm: 400 },
      upkeep: { ...newUpkeep, reservoirMm },
    };
    expect(lacksForFill(at({ state }))).toBe(lacks);
  });

  it('is read once the water has come home for ten minutes', () => {
    const judged = { upkeep: newUpkeep, learnt: {} };
    expect(updateReservoir(judged, at({ ...mm(800), state: since('empty', 599_999) }))).toBe(judged);
    expect(updateReservoir(judged, at({ ...mm(800), state: since('resting', 700_000) }))).toBe(judged);
    expect(updateReservoir(judged, at({ state: since('empty', 700_000) }))).toBe(judged);
    const anew = judge({ reservoirMm: 300 }, {}, { ...mm(800), state: since('empty', 600_000) });
    expect(anew.upkeep.reservoirMm).toBe(800);
    const on = judge({ reservoirMm: 300 }, {}, { ...mm(800), state: since('empty', 605_000) });
    expect(on.upkeep.reservoirMm).toBeCloseTo(300 + (500 * 5) / 65, 9);
  });

  it('teaches what a fill takes, ten minutes into circulation', () => {
    const scene = (forMs: number) => ({ ...mm(380), state: since('circulating', forMs) });
    const known = { reservoirMm: 800, neededMm: 500 };
    expect(judge(known, {}, scene(600_000))).toMatchObject({
      upkeep: { neededMm: null },
      learnt: { reservoirDropMm: 420 },
    });
    expect(judge(known, { reservoirDropMm: 400 }, scene(604_999)).learnt).toEqual({ reservoirDropMm: 404 });
    expect(judge(known, {}, scene(605_000)).learnt).toEqual({});
    expect(judge(known, {}, scene(599_999)).learnt).toEqual({});
    expect(judge({ reservoirMm: null }, {}, scene(600_000)).learnt).toEqual({});
    expect(judge({ reservoirMm: 380 }, {}, scene(600_000)).learnt).toEqual({});
    const part = { ...since('circulating', 600_000), water: { level: 'part' } };
    expect(judge(known, {}, { ...mm(380), state: part }).learnt).toEqual({});
  });

  it('asks for more than was not enough', () => {
    const state = { flow: { ...calmFlow, shortMs: 0 } };
    const more = (upkeep: Partial<UpkeepMemory>) => judge(upkeep, {}, { ...mm(20), state }).upkeep.neededMm;
    expect(more({ reservoirMm: 400 })).toBe(430);
    expect(more({ reservoirMm: 400, neededMm: 440 })).toBe(440);
    expect(more({ reservoirMm: 400, neededMm: 420 })).toBe(430);
    expect(more({})).toBeNull();
  });

  it('lacks water when it stands lower after two emptyings than it did once', () => {
    const count = (reservoirMm: number, learnt: object, upkeep: object = {}, forMs = 900_000) =>
      judge({ reservoirMm, ...upkeep }, learnt, { ...mm(reservoirMm), state: since('empty', forMs) });
    expect(count(800, {}).learnt).toEqual({ reservoirFullMm: 800 });
    expect(count(800, { reservoirFullMm: 790 }, { lackingMm: 9, lackingTimes: 1 })).toMatchObject({
      upkeep: { lackingMm: 0, lackingTimes: 0 },
      learnt: { reservoirFullMm: 800 },
    });
    const known = { reservoirFullMm: 800, reservoirDropMm: 700 };
    expect(count(772, known, { lackingTimes: 1 }).upkeep).toMatchObject({ lackingMm: 28, lackingTimes: 2 });
    expect(count(772.1, known, { lackingTimes: 1 }).upkeep.lackingTimes).toBe(0);
    expect(count(775, { reservoirFullMm: 800 }).upkeep.lackingTimes).toBe(1);
    expect(count(775.1, { reservoirFullMm: 800 }).upkeep.lackingTimes).toBe(0);
    expect(count(700, known, {}, 899_999).upkeep.lackingTimes).toBe(0);
    expect(count(700, known, {}, 905_000).upkeep.lackingTimes).toBe(0);
    expect(reservoirLeakMm({ ...newUpkeep, lackingMm: 28, lackingTimes: 2 })).toBe(28);
    expect(reservoirLeakMm({ ...newUpkeep, lackingMm: 28, lackingTimes: 1 })).toBeNull();
  });

  it('that runs low stops the fill, and none follows until it was topped up', () => {
    const loop = fillingReservoir(500).set({ reservoirLevelMm: 20 }).run(20);
    expect([loop.phase, loop.why]).toEqual(['emptying', 'reservoir-low']);
    loop.set({ reservoirLevelMm: 500 }).until('empty').run(3600, 10);
    expect([loop.phase, loop.why]).toEqual(['empty', 'reservoir-low']);
    expect(loop.alarm('reservoir-low')?.text).toBe(
      'The reservoir is short of water. It stands at 500 mm; a fill needs 530 mm.',
    );
    expect(loop.state.failure.count).toBe(0);
    loop.set({ reservoirLevelMm: 560 }).until('filling');
    expect(loop.run(70).alarm('reservoir-low')).toMatchObject({ active: false });
  });

  it('with water enough is left alone', () => {
    expect(reservoirLoop(500).set({ panOutletC: 40 }).until('filling').last.alarms).toEqual([]);
  });
});

describe('the contact of the sheet', () => {
  const trend = { water: { level: 'full', trendC: 29 } };
  const values = { panOutletC: 30, panSheetC: 33, storeBottomC: 20 } as const;

  it('is seen at rest from how fast the water warms', () => {
    const sample = contactSample(situationOf({ values, state: { ...since('resting', 0), ...trend } }));
    expect(sample?.excessK).toBe(3);
    // 1 K in the 300 s of the trend, 40 kg/m2 of 30 °C: 995.65 kg/m3 and 4180 J/kgK.
    expect(sample?.heatWM2).toBeCloseTo((0.04 * 995.65 * 4180) / 300, 0);
  });

  it('is seen in flow from what comes home', () => {
    const meter = { ...initialState().meter, rateW: 3000 };
    const sample = contactSample(situationOf({ values, state: { meter } }));
    expect(sample).toEqual({ excessK: 8, heatWM2: 300 });
    expect(contactSample(situationOf({ values }))).toBeNull();
  });

  it.each([
    ['without sheet', { panOutletC: 30, storeBottomC: 20 }, {}],
    ['without outlet', { panSheetC: 30, storeBottomC: 20 }, {}],
    ['without source', { panOutletC: 30, panSheetC: 33 }, {}],
    ['in a pan that is not full', values, { water: { level: 'part', trendC: 29 } }],
    ['while it empties', values, since('emptying', 0)],
    ['at rest without a trend', values, { ...since('resting', 0), water: { level: 'full', trendC: null } }],
  ])('is not seen %s', (_, some, state) => {
    expect(contactSample(situationOf({ values: some, state }))).toBeNull();
  });

  const home = { meter: { ...initialState().meter, rateW: 3000 } };
  const rest = { ...since('resting', 1_500_000), ...trend };
  const judge = (
    upkeep: Partial<UpkeepMemory>,
    learnt: object = {},
    state: object = rest,
    some: object = {},
  ) =>
    judgeContact(
      { upkeep: { ...newUpkeep, sheetExcessK: 3, ...upkeep }, learnt: learnt as never },
      situationOf({ values: { ...values, ...some }, state }),
    );

  it('is summed up once it has settled and heat passes', () => {
    expect(judge({}).upkeep.restContact).toMatchObject({ excessKMs: 15_000, forMs: 5000 });
    expect(judge({}, {}, { ...rest, ...since('resting', 1_499_999) }).upkeep.restContact).toBe(noSums);
    expect(judge({}, {}, { ...since('circulating', 2_400_000), ...home }).upkeep.flowContact.forMs).toBe(
      5000,
    );
    expect(judge({}, {}, { ...since('circulating', 2_399_999), ...home }).upkeep.flowContact).toBe(noSums);
    // 0.18 K in 300 s are 99.9 W/m2; 0.181 K are 100.4.
    const weak = (trendC: number) => judge({}, {}, { ...rest, water: { level: 'full', trendC } });
    expect(weak(29.64).upkeep.restContact).toBe(noSums);
    expect(weak(29.639).upkeep.restContact.forMs).toBe(5000);
  });

  it('is smoothed by five minutes, from anew in each phase', () => {
    expect(judge({ sheetExcessK: 4 }).upkeep.sheetExcessK).toBeCloseTo(4 - 5 / 305, 9);
    expect(judge({ sheetExcessK: 4 }, {}, { ...rest, ...since('resting', 5000) }).upkeep.sheetExcessK).toBe(
      3,
    );
    expect(judge({ sheetExcessK: 4 }, {}, since('emptying', 9000)).upkeep.sheetExcessK).toBeNull();
    const judged = { upkeep: newUpkeep, learnt: {} };
    expect(judgeContact(judged, situationOf({ state: since('emptying', 9000) }))).toBe(judged);
  });

  /** Sums that the next step completes: an excess at a heat, held for three quarters of an hour. */
  const sums = (excessK: number, heatWM2: number, poorInARow = 0) => ({
    restContact: { excessKMs: excessK * 1e12, heatWM2Ms: heatWM2 * 1e12, forMs: 1e12, poorInARow },
  });

  it.each([
    ['a first one is learnt', sums(4, 300), {}, null, 4 / 300],
    ['a first one worse than 60 W/m2K is not', sums(5.1, 300), {}, null, undefined],
    ['a better one is', sums(3, 300), { restContactKM2W: 0.02 }, null, 0.018],
    ['a worse one is, slowly', sums(6, 300), { restContactKM2W: 0.015 }, null, 0.0151],
    ['2 K more and 1.6 times is poor, if it was before', sums(6, 300, 1), { restContactKM2W: 0.01 }, 3, 0.01],
    ['but not the first time', sums(6, 300), { restContactKM2W: 0.01 }, null, 0.01],
    [
      '1.1 K more is not',
      sums(3.1, 200, 1),
      { restContactKM2W: 0.01 },
      null,
      0.01 + 0.02 * (3.1 / 200 - 0.01),
    ],
    ['1.4 times is not', sums(8.4, 300, 1), { restContactKM2W: 0.02 }, null, 0.02016],
  ])('is judged: %s', (_, upkeep, learnt, poorK, then) => {
    const judged = judge(upkeep, learnt);
    if (poorK === null) expect(judged.upkeep.poorContactK).toBeNull();
    else expect(judged.upkeep.poorContactK).toBeCloseTo(poorK, 5);
    const { restContactKM2W } = judged.learnt;
    if (then === undefined) expect(restContactKM2W).toBeUndefined();
    else expect(restContactKM2W).toBeCloseTo(then, 7);
    expect(judged.upkeep.restContact.forMs).toBe(0);
  });

  it('is summed up for three quarters of an hour', () => {
    const at = (forMs: number) => judge({ restContact: { ...noSums, forMs } }).upkeep.restContact.forMs;
    expect([at(2_694_999), at(2_695_000)]).toEqual([2_699_999, 0]);
  });

  it('that is poor teaches nothing new, and is over when it is known to be well', () => {
    const poor = { poorContactK: 3 };
    expect(judge({ ...sums(3, 300), ...poor })).toMatchObject({ upkeep: poor, learnt: {} });
    expect(judge({ ...sums(3, 300), ...poor }, { restContactKM2W: 0.01 }).upkeep.poorContactK).toBeNull();
  });

  it('raises its alarm when the sheet stands far above its water', () => {
    const healthy = contactLoop(restingLoop(level, { emptyAfterMin: 600 }), 2, 2.5);
    expect(healthy.alarm('poor-contact')).toBeUndefined();
    expect(healthy.state.learnt['restContactKM2W']).toBeCloseTo(2 / 232, 3);
    contactLoop(healthy, 7, 2.8);
    expect(healthy.alarm('poor-contact')).toMatchObject({ active: true, priority: 'when-convenient' });
    expect(healthy.alarm('poor-contact')?.text).toMatch(/It stands \d\.\d K higher above the water/);
  });
});
