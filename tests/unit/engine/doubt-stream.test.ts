import { describe, expect, it } from 'vitest';
import { darkSince } from '../../../controller/engine/sense/doubt/dark.ts';
import { gainBounds } from '../../../controller/engine/sense/doubt/gain.ts';
import type { Situation } from '../../../controller/engine/situation.ts';
import { waterDensityKgM3, waterHeatJKgK } from '../../../controller/engine/water.ts';
import type { Channel } from '../../../shared-types/channels.ts';
import { causeOf, doubtsOf, minutes } from './doubt-rig.ts';
import { allSensors, circulatingLoop, type Loop, makeSite, restingLoop, type Values } from './rig.ts';

const site = makeSite('drain-valve');
const metered = makeSite('drain-valve', allSensors);
const noInlet = makeSite('drain-valve', ['panOutletC', 'panSheetC', 'storeBottomC', 'ambientC']);
const outletOnly = makeSite('drain-valve', ['panOutletC', 'storeBottomC', 'ambientC']);
const sheetOnly = makeSite('drain-valve', ['panSheetC', 'storeBottomC', 'ambientC']);

const both = ['panInletC disagrees inlet-source', 'storeBottomC disagrees inlet-source'];

describe('inlet and store bottom while water circulates', () => {
  it.each([
    [2.5, 0],
    [2.6, 2],
    [-2.5, 0],
    [-2.6, 2],
  ])('%d K apart: %d sensors in doubt', (apartK, count) => {
    const loop = circulatingLoop(site).set({ panInletC: 20 + apartK });
    expect(doubtsOf(minutes(loop, 8))).toEqual(count === 0 ? [] : both);
  });

  it('are in doubt after five looks once the pipe is flushed, and the pump stops', () => {
    const loop = minutes(circulatingLoop(site).set({ panInletC: 26 }), 5);
    expect(doubtsOf(loop)).toEqual([]);
    minutes(loop, 1);
    expect(doubtsOf(loop)).toEqual(both);
    expect(loop.step().last.phase).toBe('emptying');
    expect(loop.why).toBe('difference-doubted');
    expect(loop.last.reasons.phase.text).toBe(
      'A sensor of pan or store bottom is in doubt: the pan reads 7.0 K above the store bottom; nothing is harvested on its word.',
    );
    minutes(loop, 2);
    expect(loop.alarm('sensor-doubtful')).toMatchObject({
      priority: 'soon',
      values: { sensors: 2 },
      text: 'A sensor cannot be right: Pan inlet, Store bottom.',
    });
  });

  it('are not compared while they rest, nor where next to nothing flows', () => {
    expect(doubtsOf(minutes(restingLoop(site).set({ panInletC: 29 }), 20))).toEqual([]);
    const flowing = (flowLMin: number) => {
      const loop = circulatingLoop(metered).set({ panInletC: 26, flowLMin });
      return doubtsOf(minutes(loop, 8)).length;
    };
    expect([flowing(5.9), flowing(6)]).toEqual([0, 2]);
  });

  it('are used again on trial a day later, stay named, and are free after as many good looks', () => {
    const loop = minutes(circulatingLoop(site).set({ panInletC: 26 }), 8);
    loop.set({ panOutletC: 14, panSheetC: 14, panInletC: 20 });
    minutes(loop, 24 * 60 - 3);
    expect(causeOf(loop, 'storeBottomC')).toBe('disagrees');
    minutes(loop, 4);
    expect([causeOf(loop, 'storeBottomC'), causeOf(loop, 'panInletC')]).toEqual(['good', 'good']);
    expect(loop.alarm('sensor-doubtful')?.active).toBe(true);
    loop.set({ panSheetC: 45, panOutletC: 45 }).until('filling').set({ panSheetC: 27, panOutletC: 27 });
    loop.until('circulating');
    const accused = () => doubtsOf(loop).filter((text) => text.endsWith('inlet-source'));
    minutes(loop, 15);
    expect(accused()).toEqual(both);
    minutes(loop, 1);
    expect(accused()).toEqual([]);
  });

  it('are stopped again on trial when they fail again', () => {
    const loop = minutes(circulatingLoop(site).set({ panInletC: 26 }), 8);
    minutes(loop.set({ panOutletC: 14, panSheetC: 14, panInletC: 20 }), 24 * 60 + 2);
    loop.set({ panSheetC: 45, panOutletC: 45 }).until('filling');
    loop.set({ panSheetC: 27, panOutletC: 27, panInletC: 26 }).until('circulating');
    minutes(loop, 8);
    expect([loop.phase, causeOf(loop, 'storeBottomC')]).toEqual(['empty', 'disagrees']);
  });

  it('stay in doubt over a restart', () => {
    const loop = minutes(circulatingLoop(site).set({ panInletC: 26 }), 8)
      .step(null)
      .step();
    expect(doubtsOf(loop)).toEqual(both);
    expect(causeOf(loop, 'panInletC')).toBe('disagrees');
  });

  /** The pan's outlet tells which of the two is wrong, once what the pan held at first is gone. */
  it.each([
    [{ panInletC: 20, storeBottomC: 12, panOutletC: 27 }, ['storeBottomC disagrees inlet-source']],
    [{ panInletC: 8, storeBottomC: 20, panOutletC: 27 }, ['panInletC disagrees inlet-source']],
    [{ panInletC: 23, storeBottomC: 20, panOutletC: 27 }, both],
  ])('%o: by the outlet %j are wrong', (values, expected) => {
    const loop = minutes(circulatingLoop(site), 59);
    loop.set({ ...values, panSheetC: 27 });
    minutes(loop, 7);
    expect(doubtsOf(loop)).toEqual(expected);
  });

  it('are the inlet and the reservoir where an exchanger stands between', () => {
    const sensors: readonly Channel[] = [
      'panOutletC',
      'panSheetC',
      'panInletC',
      'storeBottomC',
      'reservoirC',
    ];
    const behind = makeSite('pump-stop', sensors, { plumbing: 'reservoir' });
    const loop = circulatingLoop(behind).set({ reservoirC: 26, panInletC: 26 });
    expect(doubtsOf(minutes(loop, 10))).toEqual([]);
    minutes(loop.set({ reservoirC: 22 }), 8);
    expect(doubtsOf(loop)).toEqual(['panInletC disagrees inlet-source', 'reservoirC disagrees inlet-source']);
  });
});

describe('what water may gain on its way through the pan', () => {
  const bounds = (ambientC: number | null, pumpFraction: number, isDark: boolean) =>
    gainBounds({ facts: { ambientC }, state: { outputs: { pumpFraction } }, site } as Situation, 20, isDark);
  // 10 m2 over 20 L/min: 1 W/m2 warms it by 0.0072 K.
  const perWM2 = 10 / ((20 / 60_000) * waterDensityKgM3(20) * waterHeatJKgK(20));

  it.each([
    [20, 1, false, -100, 1100],
    [20, 1, true, -100, 0],
    [30, 1, true, -100, 250],
    [10, 1, true, -350, 0],
    [null, 1, true, -475, 375],
    [20, 0.5, false, -200, 2200],
    [20, 0, false, -1000, 11_000],
  ])('in air of %d °C at %d of the flow, dark %s: %d to %d W/m2', (airC, fraction, dark, least, most) => {
    const { leastK, mostK } = bounds(airC, fraction, dark);
    expect(leastK).toBeCloseTo(least * perWM2, 9);
    expect(mostK).toBeCloseTo(most * perWM2, 9);
  });
});

/** A loop that circulates from morning until the sun has set, at half past nine. */
function intoTheDark(ofSite: typeof site, values: Values): Loop {
  const loop = circulatingLoop(ofSite).set({ panInletC: 24, storeBottomC: 24, ambientC: 15, ...values });
  // A pair that was compared and still shows a difference that starts the pump: the loop goes on by it.
  loop.settings = { ...loop.settings, startDifferenceK: 1, stopDifferenceK: 0.5, fillDifferenceK: 3 };
  while (loop.state.watch.darkMs === null) minutes(loop, 1);
  return loop;
}

describe('a gain in the dark', () => {
  it('puts store and pan in doubt where no other sensor tells', () => {
    const loop = minutes(intoTheDark(outletOnly, {}), 60);
    expect(doubtsOf(loop)).toEqual([
      'panOutletC disagrees gain-in-the-dark',
      'storeBottomC disagrees gain-in-the-dark',
    ]);
    expect(loop.step().last.phase).not.toBe('circulating');
  });

  it('is believed up to 2 K', () => {
    expect(doubtsOf(minutes(intoTheDark(outletOnly, { storeBottomC: 25 }), 90))).toEqual([]);
  });

  it('is believed in air that is warmer than the store', () => {
    const warm = (storeBottomC: number) =>
      doubtsOf(minutes(intoTheDark(outletOnly, { storeBottomC, ambientC: 33.2 }), 90)).length;
    // Ten kelvins make 250 W/m2, and those 1.8 K.
    expect([warm(23.3), warm(23.1)]).toEqual([0, 2]);
  });

  it.each([
    [site, { panInletC: 26.4 }, 'storeBottomC'],
    [site, { panSheetC: 24 }, 'panOutletC'],
    [noInlet, {}, 'storeBottomC'],
    [noInlet, { panSheetC: 24.5 }, 'panOutletC'],
  ] as const)('is explained by another sensor of the stream (%#)', (ofSite, values, wrong) => {
    const loop = minutes(intoTheDark(ofSite, values), 60);
    expect(doubtsOf(loop)).toEqual([`${wrong} disagrees gain-in-the-dark`]);
  });

  it('of a sheet alone reads as water that does not flow', () => {
    const loop = minutes(intoTheDark(sheetOnly, { panSheetC: 30 }), 60);
    expect(doubtsOf(loop)).toEqual([]);
    expect(loop.alarm('no-flow')).toBeDefined();
  });

  it('is not judged by daylight, and not before half an hour of dark', () => {
    expect(doubtsOf(minutes(circulatingLoop(outletOnly).set({ panOutletC: 26 }), 180))).toEqual([]);
    const loop = intoTheDark(outletOnly, {});
    minutes(loop, 43);
    expect(doubtsOf(loop)).toEqual([]);
    minutes(loop, 1);
    expect(doubtsOf(loop)).toHaveLength(2);
  });

  it('takes two hours of circulation to be judged behind an exchanger', () => {
    const sensors: readonly Channel[] = ['panOutletC', 'storeBottomC', 'reservoirC', 'ambientC'];
    const behind = makeSite('pump-stop', sensors, { plumbing: 'reservoir' });
    expect(doubtsOf(minutes(intoTheDark(behind, { reservoirC: 25 }), 60))).toHaveLength(2);
  });

  it('is told by a sun sensor where no calendar is known', () => {
    const dark = (sunHeightDeg: number | null, sunWM2: number | null, darkMs: number | null = null) =>
      darkSince({
        sunHeightDeg,
        readings: sunWM2 === null ? {} : { irradianceWM2: { quality: 'good', value: sunWM2, ageMs: 0 } },
        state: { watch: { darkMs } },
        runMs: 9,
      } as unknown as Situation);
    expect([dark(null, 4.9), dark(null, 5), dark(null, null)]).toEqual([9, null, null]);
    expect([dark(-0.1, 500), dark(0, 0), dark(-5, null, 3)]).toEqual([9, null, 3]);
  });
});
