import { describe, expect, it } from 'vitest';
import { initialState } from '../../../controller/engine/index.ts';
import { defaultSettings, settingsSchema } from '../../../shared-types/settings.ts';
import { createLoop } from '../../../sim/loop.ts';
import { createPlant } from '../../../sim/plant/state.ts';
import { createExtremes, lookAt } from '../../../sim/simulate/extremes.ts';
import { createWeather } from '../../../sim/weather/weather.ts';
import { plumbedSite } from '../../support/plants.ts';

const stepMs = 10_000;
const hourMs = 3_600_000;
const limitC = 40;
/** Far more than the store cools in a night, so that it is only the dry sheet that lets the pan be filled again. */
const storeReleaseK = 15;

/** Three clear days of June over a store from which nobody draws: its limit is met on each of them. */
function hotDays(drain: 'drain-valve' | 'drain-pump') {
  const site = plumbedSite('open-store', 'high-with-low-drain', drain);
  const { location } = site;
  const fromMs = Date.parse('2031-06-21T00:00:00Z');
  const plant = createPlant(site, { waterC: 30, panC: 15, traits: { drawnStoreFraction: 0 } });
  const loop = createLoop({
    ...{ site, plant, seed: 1, state: initialState() },
    settings: settingsSchema.parse({
      ...defaultSettings,
      ...site.settings,
      storeLimitC: limitC,
      storeReleaseK,
    }),
    weather: createWeather({ location, seed: 1, kinds: ['clear'] }),
  });
  const extremes = createExtremes();
  const solarMs = fromMs - (location.longitudeDeg / 15) * hourMs;
  const phasesAt: string[] = [];
  const full: boolean[] = [];
  for (let atMs = solarMs; atMs < solarMs + 72 * hourMs; atMs += stepMs) {
    const { decision, state } = loop.step(atMs);
    lookAt(extremes, plant);
    const hour = ((atMs - solarMs) / hourMs) % 24;
    if (hour === 14) full.push(state.heat.storeFull);
    if (hour === 14 || hour === 22) phasesAt.push(decision.phase);
  }
  return { phasesAt, full, extremes, linerLimitC: site.pan.linerLimitC };
}

describe('a store that comes to its limit on clear days', () => {
  it.each(['drain-valve', 'drain-pump'] as const)(
    'has the water of its pan back in the evening with %s, and the liner never stands a hot dry sheet',
    (drain) => {
      const { phasesAt, full, extremes, linerLimitC } = hotDays(drain);
      expect(full).toEqual([true, true, true]);
      expect(phasesAt).toEqual(['resting', 'empty', 'resting', 'empty', 'resting', 'empty']);
      expect(extremes.highestSheetC).toBeLessThan(linerLimitC);
      expect(extremes.highestStoreC).toBeLessThan(limitC + 0.5);
    },
  );
});
