import { describe, expect, it } from 'vitest';
import { isState } from '../../../../controller/engine/check-state.ts';
import { updateHeat } from '../../../../controller/engine/hazards/heat.ts';
import { dumpsHeat, heatDumpRuns } from '../../../../controller/engine/hazards/heat-dump.ts';
import { hazards } from '../../../../controller/engine/hazards/table.ts';
import { assertSafe, withHeatDump } from '../../../../controller/engine/outputs.ts';
import { type DumpMemory, initialState, safeOutputs } from '../../../../controller/engine/state.ts';
import { allSensors, circulatingLoop, commonSensors, disturb, makeSite } from '../rig.ts';
import { commandOf, nowMs, situationOf, type Told } from '../situations.ts';

const heatDump = { conductanceWK: 300 };
const site = makeSite('drain-valve', commonSensors, { heatDump });
const initial = initialState();
const idle: DumpMemory = { wanted: false, failed: false, sinceMs: null, fromC: null };
const wanted: DumpMemory = { ...idle, wanted: true };
/** The liner is hot from 72 °C on, the store full at 60 °C. */
const hot: Told = { panOutletC: 72, panSheetC: 72, storeBottomC: 55, storeTopC: 60, ambientC: 25 };

interface Given {
  readonly told?: Told;
  readonly dump?: DumpMemory;
  readonly full?: boolean;
  readonly on?: boolean;
  readonly at?: typeof site;
}

/** Full store, hot pan, the output off, but for what is given. */
function situation({ told = {}, dump, full = true, on = false, at = site }: Given = {}) {
  const memory = { storeFull: full, linerHot: false, cooling: false };
  const heat = dump === undefined ? memory : { ...memory, dump };
  const outputs = { ...safeOutputs, pumpFraction: 1, ...(on ? { heatDumpOn: true } : {}) };
  const state = { heat, outputs, phase: { name: 'circulating', sinceMs: 0, afterFill: false } } as const;
  return situationOf({ site: at, told: { ...hot, ...told }, state, level: 'full' });
}
const dumpOf = (given?: Given) => updateHeat(situation(given)).dump;

describe('the heat dump', () => {
  it('is remembered only where the loop has one', () => {
    const plain = situation({ at: makeSite('drain-valve') });
    expect(updateHeat(plain)).toStrictEqual({ storeFull: true, linerHot: true, cooling: false });
    expect(dumpOf({ told: { panOutletC: 30, panSheetC: 30 } })).toEqual(idle);
  });

  it('is wanted from a hot liner on, until the pan is 8 K below that', () => {
    const pan = (valueC: number, dump: DumpMemory) =>
      dumpOf({ told: { panOutletC: valueC, panSheetC: valueC }, dump })?.wanted;
    expect([pan(72, idle), pan(71.9, idle)]).toEqual([true, false]);
    expect([pan(64, wanted), pan(63.9, wanted)]).toEqual([true, false]);
  });

  it('goes by the hottest of the pan', () => {
    expect(dumpOf({ told: { panOutletC: 60 } })?.wanted).toBe(true);
  });

  it('is not wanted while the store takes heat', () => {
    const cold = { storeTopC: 40, storeBottomC: 40 };
    expect(dumpOf({ told: cold, full: false })).toEqual(idle);
    expect(dumpOf({ told: cold, dump: { ...wanted, failed: true } })).toEqual(idle);
  });

  it('is wanted only from a pan that is warmer than the store, and then anew from a hot liner on', () => {
    const told = (panC: number, storeBottomC: number) => ({
      panOutletC: panC,
      panSheetC: panC,
      storeBottomC,
    });
    expect(dumpOf({ told: told(70, 70), dump: wanted })?.wanted).toBe(false);
    expect(dumpOf({ told: told(70, 69.9), dump: wanted })?.wanted).toBe(true);
    expect(dumpOf({ told: told(70, 69.9), dump: idle })?.wanted).toBe(false);
    const { storeBottomC: _bottom, ...blind } = hot;
    const blindly = situationOf({ site, told: blind, state: situation().state, level: 'full' });
    expect(updateHeat(blindly).dump?.wanted).toBe(false);
  });

  it('stays as it is while the pan cannot be read', () => {
    const told = { storeBottomC: 55, storeTopC: 60 };
    const dump = { ...wanted, fromC: 60 };
    const blind = situationOf({ site, told, state: situation({ dump }).state, level: 'full' });
    expect(updateHeat(blind).dump).toBe(dump);
  });

  it('remembers since when it is on, and the store when it came on first', () => {
    expect(dumpOf({ dump: wanted, on: true })).toEqual({ ...wanted, sinceMs: nowMs, fromC: 60 });
    const before = { ...wanted, sinceMs: 5, fromC: 59.5 };
    expect(dumpOf({ dump: before, on: true })).toEqual({ ...before, failed: true, wanted: false });
    expect(dumpOf({ dump: { ...before, sinceMs: nowMs - 1000 } })).toEqual({ ...before, sinceMs: null });
  });

  it('takes down the store as soon as it can be read', () => {
    const since = { ...wanted, sinceMs: nowMs - 1000 };
    expect(dumpOf({ dump: since, on: true })).toEqual({ ...since, fromC: 60 });
  });

  it('is the same object while nothing changes', () => {
    for (const given of [
      { dump: { ...wanted, sinceMs: nowMs - 1000, fromC: 60 }, on: true },
      { dump: wanted },
      { dump: idle, told: { panOutletC: 30, panSheetC: 30 } },
      { dump: idle, told: { panOutletC: 66, panSheetC: 66 } },
    ])
      expect(dumpOf(given)).toBe(given.dump);
    const calm = situation({ dump: wanted });
    const heat = { ...calm.state.heat, linerHot: true };
    expect(updateHeat({ ...calm, state: { ...calm.state, heat } })).toBe(heat);
  });

  it('forgets one thing as well as all once it is over', () => {
    const cool = { panOutletC: 30, panSheetC: 30 };
    for (const dump of [wanted, { ...idle, failed: true }, { ...idle, fromC: 60 }])
      expect(dumpOf({ told: cool, dump })).toEqual(idle);
  });

  it('has a quarter of an hour to cool the liner', () => {
    const since = (forMs: number, panC = 72, on = true) =>
      dumpOf({
        told: { panOutletC: panC, panSheetC: panC },
        dump: { ...wanted, sinceMs: nowMs - forMs, fromC: 60 },
        on,
      })?.failed;
    expect([since(899_999), since(900_000)]).toEqual([false, true]);
    expect([since(900_000, 71.9), since(900_000, 72, false)]).toEqual([false, false]);
  });

  it('has failed when the store warms by 2 K, from where it came or from its limit', () => {
    const at = (storeTopC: number, fromC: number | null, on = true) =>
      dumpOf({ told: { storeTopC }, dump: { ...wanted, sinceMs: on ? nowMs - 1000 : null, fromC }, on })
        ?.failed;
    expect([at(61.9, 60), at(62, 60)]).toEqual([false, true]);
    expect([at(61.9, 55), at(62, 55)]).toEqual([false, true]);
    expect([at(64.9, 63), at(65, 63)]).toEqual([false, true]);
    expect(at(70, null)).toBe(false);
    expect(at(70, 60, false)).toBe(false);
  });

  it('is not tried again until the pan has cooled', () => {
    const failed = { ...idle, failed: true, fromC: 60 };
    expect(dumpOf({ dump: failed, told: { panOutletC: 79 } })).toEqual(failed);
    expect(dumpOf({ dump: failed, told: { panOutletC: 64, panSheetC: 64 } })).toEqual(failed);
  });
});

describe('heat that is dumped', () => {
  const hazard = hazards.find(({ code }) => code === 'dumping-heat');

  it('comes before the rest of a full store, and after frost and blindness', () => {
    const order = hazards.map(({ code }) => code);
    const at = order.indexOf('dumping-heat');
    expect(at).toBe(order.indexOf('store-limit') - 1);
    for (const code of [
      'frost-measured',
      'frost-waiting-release',
      'frost-predicted',
      'sensors-failed',
    ] as const)
      expect(order.indexOf(code)).toBeLessThan(at);
  });

  it('sends the full pan round, and says why', () => {
    const given = situation({ dump: wanted });
    expect(hazard?.when(given)).toEqual({ panC: 72, linerHotC: 72, storeC: 60 });
    expect(hazard?.goal(given)).toBe('run');
    expect(hazard?.fails).toBeUndefined();
    expect(hazard?.when(situation({ dump: idle }))).toBeNull();
    expect(hazard?.when(situation())).toBeNull();
  });

  it('needs a full pan', () => {
    const { state } = situation({ dump: wanted });
    expect(dumpsHeat(situationOf({ site, told: hot, state, level: 'full' }))).toBe(true);
    expect(dumpsHeat(situationOf({ site, told: hot, state, level: 'part' }))).toBe(false);
  });
});

describe('the output of the heat dump', () => {
  const circulating = { name: 'circulating', sinceMs: 0, afterFill: false } as const;
  const command = commandOf('run', { cause: { code: 'dumping-heat', values: {} } });
  const runs = (pumpFraction: number, flowLMin?: number) => {
    const state = { outputs: { ...safeOutputs, pumpFraction } };
    const told = flowLMin === undefined ? hot : { ...hot, flowLMin };
    return heatDumpRuns(situationOf({ site, told, state }), circulating, command);
  };

  it('is on while water goes round for it, once the pump runs and a measured flow is there', () => {
    expect([runs(1), runs(0)]).toEqual([true, false]);
    expect([runs(1, 2), runs(1, 1.9), runs(0, 20)]).toEqual([true, false, false]);
    const given = situation();
    expect(heatDumpRuns(given, { name: 'filling', sinceMs: 0 }, command)).toBe(false);
    expect(heatDumpRuns(given, circulating, commandOf('run'))).toBe(false);
  });

  it('is spoken of only where the loop has one', () => {
    expect(withHeatDump(safeOutputs, site, false)).toEqual({ ...safeOutputs, heatDumpOn: false });
    expect(withHeatDump(safeOutputs, makeSite('drain-valve'), true)).toBe(safeOutputs);
  });

  it('is never on without the pump', () => {
    const driven = { ...safeOutputs, drainOpen: false };
    expect(() => assertSafe({ ...driven, heatDumpOn: true }, site)).toThrow('heat dump without the pump');
    assertSafe({ ...driven, heatDumpOn: false }, site);
    assertSafe({ ...driven, pumpFraction: 1, heatDumpOn: true }, site);
  });
});

describe('a loop with a heat dump', () => {
  const full = { heatDump, plumbing: 'reservoir' } as const;
  const still = { flowLMin: 0, pumpPowerW: 0 };
  /** A circulating loop whose store is full and whose liner comes to be hot. */
  const hotLoop = (changes: object = { heatDump }, sensors = allSensors) =>
    circulatingLoop(makeSite('drain-valve', sensors, changes)).set({
      ...{ panOutletC: 74, panSheetC: 75, panInletC: 56, storeBottomC: 55, storeTopC: 61 },
    });

  it('dumps heat with the pump on, counts none of it as brought home, and raises no alarm', () => {
    const loop = hotLoop().run(15);
    expect([loop.why, loop.phase, loop.last.outputs.heatDumpOn]).toEqual([
      'dumping-heat',
      'circulating',
      true,
    ]);
    const { heatHomeJ } = loop.last.meter.total;
    loop.run(300);
    expect(loop.last.meter.heatRateW).toBeNull();
    expect(loop.last.meter.total.heatHomeJ).toBe(heatHomeJ);
    expect(loop.last.alarms.map(({ code }) => code)).not.toContain('liner-hot');
  });

  it('rests with an alarm once that does not help', () => {
    const loop = hotLoop().run(15).set({ storeTopC: 63.5 }).run(5).set(still).run(120);
    expect([loop.why, loop.phase, loop.last.outputs.heatDumpOn]).toEqual(['store-limit', 'resting', false]);
    expect(loop.last.alarms.find(({ code }) => code === 'liner-hot')?.text).toContain(
      'The liner is close to its limit: the heat dump does not cool it.',
    );
  });

  it('says nothing of a heat dump in the alarm where none has failed', () => {
    const loop = hotLoop({}).run(5).set(still).run(120);
    expect([loop.why, loop.last.outputs]).toEqual(['store-limit', { ...safeOutputs, drainOpen: false }]);
    expect(loop.last.alarms.find(({ code }) => code === 'liner-hot')?.text).not.toContain('heat dump');
  });

  it('keeps its reservoir off the full store', () => {
    const loop = hotLoop(full, [...commonSensors, 'reservoirC'])
      .set({ reservoirC: 70 })
      .run(15);
    expect([loop.why, loop.last.outputs.heatDumpOn]).toEqual(['dumping-heat', true]);
    expect(loop.last.outputs.exchangerPumpOn).toBe(false);
  });

  it('stops dumping as soon as frost is measured', () => {
    const loop = hotLoop().run(15).set({ panInletC: 3 }).run(20);
    expect([loop.why, loop.last.outputs.heatDumpOn]).toEqual(['frost-measured', false]);
  });

  it('turns the output off at a restart', () => {
    const loop = hotLoop().run(15);
    expect(loop.last.outputs.heatDumpOn).toBe(true);
    expect(loop.step(null).last.outputs).toMatchObject({ pumpFraction: 0, heatDumpOn: false });
  });
});

describe('a saved state', () => {
  const whole = {
    ...initial,
    outputs: { ...initial.outputs, heatDumpOn: true },
    heat: { ...initial.heat, dump: { wanted: true, failed: false, sinceMs: 5, fromC: 60 } },
  };

  it('may have a heat dump or none', () => {
    expect([isState(whole), isState(initial)]).toEqual([true, true]);
  });

  it.each([
    ['outputs', 'heatDumpOn', [null, 1, 'true']],
    ['heat', 'dump', [null, true, []]],
  ])('has what belongs there in %s.%s', (slot, field, strangers) => {
    for (const stranger of strangers)
      expect([stranger, isState(disturb(whole, [slot, field], stranger))]).toEqual([stranger, false]);
  });

  it.each(['wanted', 'failed', 'sinceMs', 'fromC'])('knows a stranger in the memory of it: %s', (field) => {
    for (const stranger of [undefined, 'true', []])
      expect([stranger, isState(disturb(whole, ['heat', 'dump', field], stranger))]).toEqual([
        stranger,
        false,
      ]);
  });
});
