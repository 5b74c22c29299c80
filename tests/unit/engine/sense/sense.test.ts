import { describe, expect, it } from 'vitest';
import { drainSaysOf } from '../../../../controller/engine/sense/drain-says.ts';
import { sense } from '../../../../controller/engine/sense/sense.ts';
import { sensorRulesOf } from '../../../../controller/engine/sense/sensor-rules.ts';
import { type EngineState, initialState, type Phase } from '../../../../controller/engine/state.ts';
import { channelMeaning } from '../../../../shared-types/channels.ts';
import type { Feedback } from '../../../../shared-types/engine.ts';
import { makeSite, quickSettings } from '../rig.ts';

const site = makeSite('drain-valve', ['panOutletC', 'storeBottomC', 'flowLMin', 'pumpPowerW']);

describe('the rules of a sensor', () => {
  it('are derived once for each site', () => {
    expect(sensorRulesOf(site)).toBe(sensorRulesOf(site));
    expect(sensorRulesOf({ ...site })).not.toBe(sensorRulesOf(site));
  });

  it('take the median of temperatures, and each sample of flow and power', () => {
    expect(sensorRulesOf({ ...site }).sensors.map(({ channel, smoothed }) => [channel, smoothed])).toEqual([
      ['panOutletC', true],
      ['storeBottomC', true],
      ['flowLMin', false],
      ['pumpPowerW', false],
    ]);
  });

  it('have the bounds of the site, else those of the channel', () => {
    const { panOutletC } = site.sensors;
    const bounded = {
      ...site,
      sensors: { panOutletC: { ...panOutletC, least: -3, most: 70 }, storeBottomC: panOutletC },
    };
    expect(sensorRulesOf(bounded as typeof site).sensors).toMatchObject([
      { least: -3, most: 70 },
      { least: channelMeaning.storeBottomC.least, most: channelMeaning.storeBottomC.most },
    ]);
  });
});

describe('the readings of a step', () => {
  const heard = (raw: object, before = {}) =>
    sense(raw as Record<string, unknown>, before, { ...site }, quickSettings, 100_000);
  const staleMs = quickSettings.staleAfterS * 1000;

  it('are missing where nothing was heard', () => {
    const missing = { quality: 'failed', cause: 'missing' };
    expect(Object.keys(heard({}).readings)).toEqual(Object.keys(site.sensors));
    expect(heard({})).toEqual({
      readings: { panOutletC: missing, storeBottomC: missing, flowLMin: missing, pumpPowerW: missing },
      sensing: {},
    });
  });

  it('are stale above the age of the settings', () => {
    const { readings, sensing } = heard({
      panOutletC: { value: 20, ageMs: staleMs },
      storeBottomC: { value: 20, ageMs: staleMs + 1 },
    });
    expect(readings).toMatchObject({
      panOutletC: { quality: 'good', value: 20, ageMs: staleMs },
      storeBottomC: { quality: 'failed', cause: 'stale' },
    });
    expect(Object.keys(sensing)).toEqual(['panOutletC']);
  });

  it('go on from what is remembered', () => {
    const first = heard({ panOutletC: { value: 20, ageMs: 500 } });
    const again = heard({ panOutletC: { value: 25, ageMs: 500 } }, first.sensing);
    expect(again.sensing.panOutletC).toBe(first.sensing.panOutletC);
  });
});

describe('what the drain valve says', () => {
  const runMs = 100_000;
  const told = (
    feedback: Partial<Feedback> | null,
    phase: Phase['name'] = 'circulating',
    ofSite = site,
    sinceMs = 50_000,
  ) => {
    const start = initialState();
    const state: EngineState = {
      ...start,
      phase: { name: phase, sinceMs: 0 } as Phase,
      pump: { ...start.pump, sinceMs },
    };
    const whole = feedback === null ? null : { pumpFraction: 0, drainOpen: true, ageMs: 0, ...feedback };
    return drainSaysOf(whole, state, ofSite, quickSettings, runMs);
  };
  const staleMs = quickSettings.staleAfterS * 1000;

  it('is what fresh feedback tells', () => {
    expect([told({}), told({ drainOpen: false }), told({ drainOpen: null }), told(null)]).toEqual([
      true,
      false,
      null,
      null,
    ]);
    expect([told({}, 'emptying', makeSite('pump-stop')), told({}, 'emptying')]).toEqual([null, true]);
  });

  it('is nothing once it is stale', () => {
    expect([told({ ageMs: staleMs }, 'resting'), told({ ageMs: staleMs + 1 }, 'resting')]).toEqual([
      true,
      null,
    ]);
  });

  it.each(['circulating', 'filling'] as const)(
    'is nothing of the time before the pump began: %s',
    (phase) => {
      const since = runMs - 300;
      expect([told({ ageMs: 300 }, phase, site, since), told({ ageMs: 301 }, phase, site, since)]).toEqual([
        true,
        null,
      ]);
      expect(told({ ageMs: 301 }, 'resting', site, since)).toBe(true);
    },
  );
});
