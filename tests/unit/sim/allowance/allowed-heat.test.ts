import { describe, expect, test } from 'vitest';
import type { DayCurves } from '../../../../shared-types/log.ts';
import type { Site } from '../../../../shared-types/site.ts';
import { allowedGainWM2 } from '../../../../sim/allowance/allowed-gain.ts';
import { allowedHeat, leastCoveredFraction } from '../../../../sim/allowance/allowed-heat.ts';
import { usualTraits } from '../../../../sim/plant/traits.ts';
import { blackBodyWM2 } from '../../../../sim/weather/sky.ts';
import { testSiteMessage } from '../../../support/fake-monitor/site.ts';

const moment = {
  airC: 20,
  storeBottomC: 30,
  irradianceWM2: 800,
  clearWM2: 800,
  windMs: 2,
  longWaveWM2: blackBodyWM2(20),
};
const gain = (change: Partial<typeof moment> | { windMs: null } | { longWaveWM2: null }) =>
  allowedGainWM2({ ...moment, ...change }, usualTraits);

/** By hand, with 0.905 (1 - 0.025 u) (G + 0.95 (EL - sigma Ta^4)) - (11.5 + 3.5 u) (Ts - Ta). */
describe('what a full sheet as cool as the store bottom gains', () => {
  test('is sun less loss when the sky is as warm as the air', () => {
    expect(gain({})).toBeCloseTo(0.905 * 0.95 * 800 - 18.5 * 10, 9);
  });
  test('takes 2 m/s of wind where none is measured', () => {
    expect(gain({ windMs: null })).toBe(gain({}));
    expect(gain({ windMs: 3 })).toBeLessThan(gain({}));
  });
  test('takes a clear sky, 277.06 K above air of 20 °C, where the sky is not measured', () => {
    const skyWM2 = 0.95 * (5.670374e-8 * 277.06 ** 4 - 418.77);
    expect(gain({ longWaveWM2: null })).toBeCloseTo(0.85975 * (800 + skyWM2) - 185, 1);
  });
  test('closes that sky by cloud as far as the sun falls short of a clear one', () => {
    const skyWM2 = 0.95 * (5.670374e-8 * 277.06 ** 4 - 418.77) * (1 - 0.85 / 2);
    expect(gain({ longWaveWM2: null, irradianceWM2: 400 } as never)).toBeCloseTo(
      0.85975 * (400 + skyWM2) - 185,
      1,
    );
  });
  test('tells nothing of clouds from the light of a low sun', () => {
    const warm = { longWaveWM2: null, storeBottomC: 5, irradianceWM2: 50 };
    const gained = (clearWM2: number) => gain({ ...warm, clearWM2 } as never);
    // Half covered at 100 W/m2; taken for clear below.
    expect(gained(100) - gained(99.99)).toBeGreaterThan(20);
  });
  test('opens the sky no wider when the sun is brighter than a clear one', () => {
    const bright = { longWaveWM2: null, irradianceWM2: 900 };
    expect(gain({ ...bright, clearWM2: 800 } as never)).toBe(gain({ ...bright, clearWM2: 900 } as never));
  });
  test('is never below nothing', () => {
    expect(gain({ storeBottomC: 90 })).toBe(0);
  });
  test('counts air that is warmer than the store', () => {
    expect(gain({ irradianceWM2: 0, storeBottomC: 10 })).toBeCloseTo(185, 9);
  });
});

const { site } = testSiteMessage();
/** Local midnight, at the site's summer time of UTC. */
const midnightMs = Date.UTC(2031, 5, 21);
const hourMs = 3_600_000;
const stepMs = 30_000;

type Row = (hour: number) => number | null;
const steady: Readonly<Record<string, Row>> = {
  ambientC: () => 20,
  storeBottomC: () => 30,
  irradianceWM2: () => 800,
  windMs: () => 2,
  longWaveWM2: () => blackBodyWM2(20),
};

/** A day that was logged from midnight to an hour; hours that `skip` names are not there. */
function day(toHour: number, change: Record<string, Row> = {}, skip = (_hour: number) => false): DayCurves {
  const atMs: number[] = [];
  for (let at = midnightMs; at <= midnightMs + toHour * hourMs; at += stepMs)
    if (!skip((at - midnightMs) / hourMs)) atMs.push(at);
  const columns = Object.entries({ ...steady, ...change }).map(([name, row]) => [
    name,
    atMs.map((at) => row((at - midnightMs) / hourMs)),
  ]);
  return {
    day: '2031-06-21',
    atMs,
    series: Object.fromEntries(columns),
    pumpFraction: atMs.map(() => 0),
    heatTodayJ: atMs.map((_, index) => index),
    phases: [],
    events: [],
  };
}

const without = (...names: (keyof Site['sensors'])[]): Site => ({
  ...site,
  sensors: Object.fromEntries(
    Object.entries(site.sensors).filter(([name]) => !names.includes(name as never)),
  ),
});

describe('what the weather of a day allowed', () => {
  test('is the gain over the gross area and the time, up to the newest step', () => {
    const told = allowedHeat(day(15), site);
    expect(told).toMatchObject({
      state: 'told',
      day: '2031-06-21',
      sun: 'measured',
      untilMs: midnightMs + 15 * hourMs,
      heatHomeJ: 15 * 120,
    });
    if (told.state === 'told') expect(told.allowedJ / (502.8 * 12 * 15 * 3600)).toBeCloseTo(1, 6);
  });

  test('takes the clear sky of the place where the sun is not measured', () => {
    const told = allowedHeat(day(15), without('irradianceWM2'));
    expect(told).toMatchObject({ state: 'told', sun: 'clear-sky' });
    // Haurwitz at 44 deg north on the longest day: some 1000 W/m2 at noon, far less at its ends.
    if (told.state === 'told') expect(told.allowedJ).toBeGreaterThan(0);
  });

  test('needs a sensor of the air, which tells what is lost', () => {
    expect(allowedHeat(day(15), without('ambientC'))).toEqual({ state: 'no-air-sensor' });
  });

  test('waits until the sun has shone', () => {
    expect(allowedHeat(day(6), site)).toEqual({ state: 'no-sun-yet' });
    expect(allowedHeat(day(12), site).state).toBe('told');
    expect(allowedHeat({ ...day(1), atMs: [] }, site)).toEqual({ state: 'no-sun-yet' });
  });

  test.each(['ambientC', 'storeBottomC', 'irradianceWM2'])(
    'leaves out the time without a reading of %s, and tells nothing when that is too long',
    (name) => {
      const gap = (from: number, to: number) =>
        allowedHeat(
          day(15, { [name]: (hour) => (hour >= from && hour < to ? null : (steady[name]?.(hour) ?? 0)) }),
          site,
        );
      const short = gap(11.9, 12.4);
      expect(short.state).toBe('told');
      if (short.state === 'told') expect(short.allowedJ / (502.8 * 12 * 14.5 * 3600)).toBeCloseTo(1, 3);
      expect(gap(11, 13)).toMatchObject({ state: 'too-little-logged' });
    },
  );

  test('does not bridge a hole of more than a minute in the log', () => {
    const told = (hole: number) => {
      const allowed = allowedHeat(
        day(15, {}, (hour) => hour > 9 && hour < 9 + hole),
        site,
      );
      return allowed.state === 'told' ? allowed.allowedJ / (502.8 * 12 * 3600) : 0;
    };
    expect(told(1 / 60 - 0.001)).toBeCloseTo(15, 6);
    expect(told(1 / 60 + 0.001)).toBeCloseTo(15 - 1.5 / 60, 6);
    expect(told(0.5)).toBeCloseTo(14.5, 6);
  });

  test('says how much of the light was seen where that is too little', () => {
    const told = allowedHeat(
      day(15, {}, (hour) => hour > 9 && hour < 14),
      site,
    );
    expect(told.state).toBe('too-little-logged');
    if (told.state !== 'too-little-logged') return;
    expect(told.coveredFraction).toBeLessThan(leastCoveredFraction);
    expect(told.coveredFraction).toBeGreaterThan(0.1);
  });

  test('of one sample tells that too little is there', () => {
    const noon = midnightMs + 14 * hourMs;
    const one = { ...day(0), atMs: [noon] };
    expect(allowedHeat(one, site)).toEqual({ state: 'too-little-logged', coveredFraction: 0 });
  });
});
