import { describe, expect, it } from 'vitest';
import { darkSince } from '../../../../../controller/engine/sense/doubt/dark.ts';
import { flows, gainBounds, isFlushed } from '../../../../../controller/engine/sense/doubt/gain.ts';
import { initialState } from '../../../../../controller/engine/state.ts';
import { allSensors, makeSite } from '../../rig.ts';
import { nowMs, situationOf } from '../../situations.ts';
import { lasting, streaming } from './watched.ts';

const site = makeSite('drain-valve');
const metered = makeSite('drain-valve', allSensors);

describe('what a pan may gain', () => {
  it('is counted from a tenth of the flow on', () => {
    const { outputs } = initialState();
    const most = (pumpFraction: number) =>
      gainBounds(situationOf({ state: { outputs: { ...outputs, pumpFraction } } }), 20, false).mostK;
    expect(most(0)).toBe(most(0.1));
    expect(most(0.1)).toBeCloseTo(10 * most(1), 9);
    expect(most(0.2)).toBeCloseTo(5 * most(1), 9);
  });

  it('allows for 15 K of air that nobody measures, either way', () => {
    const [blind, warm, cold] = [{}, { ambientC: 35 }, { ambientC: 5 }].map((told) =>
      gainBounds(streaming({ told }), 20, true),
    );
    expect([blind?.mostK, blind?.leastK]).toEqual([warm?.mostK, cold?.leastK]);
  });

  it('has the loss to colder air below it and the warmth of warmer air above it', () => {
    const bounds = (ambientC: number) => gainBounds(streaming({ told: { ambientC } }), 20, true);
    const alike = bounds(20);
    expect(alike.mostK).toBe(0);
    expect(bounds(24).mostK).toBeCloseTo(-alike.leastK, 9);
    expect(bounds(24).leastK).toBe(alike.leastK);
    expect(bounds(16).leastK).toBeCloseTo(2 * alike.leastK, 9);
    expect(bounds(16).mostK).toBe(0);
  });
});

describe('a pan', () => {
  const flushed = (forMs: number, wettedAreaM2: number) =>
    isFlushed(streaming({ site: { ...site, pan: { ...site.pan, wettedAreaM2 } } }, forMs));

  it('is flushed after three times its water, and three quarters of an hour', () => {
    expect([flushed(3_599_999, 10), flushed(3_600_000, 10)]).toEqual([false, true]);
    expect([flushed(2_699_999, 5), flushed(2_700_000, 5)]).toEqual([false, true]);
  });

  it('is not flushed at rest', () => {
    expect(isFlushed(situationOf({ state: lasting('resting', 9_000_000) }))).toBe(false);
  });
});

describe('a stream', () => {
  it.each([
    [site, {}, true],
    [site, { flowLMin: 0 }, true],
    [metered, {}, false],
    [metered, { flowLMin: 5.99 }, false],
    [metered, { flowLMin: 6 }, true],
    [metered, { flowLMin: { quality: 'doubtful', value: 20, ageMs: 0, cause: 'jumped' } }, false],
  ] as const)('%# flows as far as its meter says', (ofSite, told, expected) => {
    expect(flows(situationOf({ site: ofSite, told }))).toBe(expected);
  });
});

describe('the dark', () => {
  const { watch } = initialState();
  const since = (sunHeightDeg: number | null, sunWM2: number | null, darkMs: number | null = null) =>
    darkSince(
      situationOf({
        sunHeightDeg,
        told: sunWM2 === null ? {} : { irradianceWM2: sunWM2 },
        state: { watch: { ...watch, darkMs } },
      }),
    );

  it('begins when the sun is below the horizon', () => {
    expect([since(-0.1, 500), since(0, 0), since(-5, null, 3)]).toEqual([nowMs, null, 3]);
  });

  it('begins with a dark sun sensor where no calendar is known', () => {
    expect([since(null, 4.9), since(null, 5), since(null, null)]).toEqual([nowMs, null, null]);
  });
});
