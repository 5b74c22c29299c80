import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import {
  type EngineState,
  initialState,
  safeOutputs,
  step as stepEngine,
} from '../../../controller/engine/index.ts';
import { readSiteFile } from '../../../controller/site-file.ts';
import type { Channel } from '../../../shared-types/channels.ts';
import type { Decision, EngineInput, OperatorRequest } from '../../../shared-types/engine.ts';
import type { RawReadings } from '../../../shared-types/readings.ts';
import { defaultSettings, settingsSchema } from '../../../shared-types/settings.ts';
import { advance } from '../../../sim/plant/advance.ts';
import type { Fault } from '../../../sim/plant/faults.ts';
import { readSensors } from '../../../sim/plant/sensors.ts';
import { createPlant, type PlantState } from '../../../sim/plant/state.ts';
import { at, sum } from '../../../sim/plant/water.ts';
import { createWeather } from '../../../sim/weather/weather.ts';

const stepS = 10;
const seed = 3;
const panChannels: readonly Channel[] = ['panOutletC', 'panSheetC', 'panInletC'];

function siteNamed(name: string) {
  const read = readSiteFile(resolve('sim/scenarios', `${name}.yaml`));
  if (!read.ok) throw new Error(name);
  return read.site;
}

/** Someone who wants the full pan to rest, and asks for it anew every hour. */
function stubborn(s: number): OperatorRequest | null {
  if (s % 3600 !== 200) return null;
  return {
    id: `request-${s}`,
    ageMs: 0,
    lifeMs: 10_000,
    operation: { kind: 'rest', minutes: 1440 },
  };
}

function readingsOf(plant: PlantState, faults: readonly Fault[]): RawReadings {
  const values = readSensors(plant, seed, faults, false);
  const readings: RawReadings = {};
  for (const channel of plant.parts.channels) {
    const value = values[channel];
    if (typeof value === 'number') readings[channel] = { value, ageMs: 0 };
    else if (value !== undefined) readings[channel] = { value: null, ageMs: 0, fault: value };
  }
  return readings;
}

/** A calm, clear night of frost over a full pan that an operator wants to keep. */
function night(name: string, faults: readonly Fault[]) {
  const site = siteNamed(name);
  const settings = settingsSchema.parse({ ...defaultSettings, ...site.settings });
  const fromMs = Date.UTC(2031, 0, 15, 15, 30);
  const weather = createWeather({ location: site.location, seed, kinds: ['frost-night'] });
  const plant = createPlant(site, { waterC: 14, panC: 14, panFull: true });
  let state: EngineState = initialState();
  let decision: Decision | undefined;
  let mostIceKg = 0;
  let coldestC = 99;
  const reasons = new Set<string>();
  for (let s = 0; s <= 16 * 3600; s += stepS) {
    const nowMs = fromMs + s * 1000;
    const present = s > 600 ? faults : [];
    const first = decision === undefined;
    advance(plant, decision?.outputs ?? safeOutputs, weather.at(nowMs), first ? 0.001 : stepS, present);
    const { pumpFraction, drainOpen } = plant.moving;
    const input: EngineInput = {
      nowMs,
      elapsedMs: first ? null : stepS * 1000,
      localDay: '2031-01-15',
      readings: readingsOf(plant, present),
      feedback: { pumpFraction, drainOpen, ageMs: 0 },
      request: stubborn(s),
    };
    ({ state, decision } = stepEngine(state, input, site, settings));
    reasons.add(decision.reasons.phase.code);
    for (const lane of [plant.pan.core, plant.pan.edge]) {
      mostIceKg = Math.max(mostIceKg, sum(lane.iceKg));
      const cellKg = sum(lane.massKg) / lane.massKg.length;
      if (cellKg > 1) coldestC = Math.min(coldestC, at(lane.waterC, 0));
    }
  }
  return { mostIceKg, coldestC, reasons };
}

const fault = (name: Fault['name'], channel: Channel, size = 0): Fault => ({
  name,
  channel,
  size,
  forS: 3600,
});

/** What may be wrong with what tells of frost. Without the predicted night each but the first ends in ice. */
const rows: readonly (readonly [string, (channels: readonly Channel[]) => readonly Fault[]])[] = [
  ['nothing', () => []],
  ['pan sensors that stand still', (pan) => pan.map((channel) => fault('sensor-stuck', channel))],
  ['pan sensors that show 6 K too much', (pan) => pan.map((channel) => fault('sensor-offset', channel, 6))],
  [
    'the same and a broken air sensor',
    (pan) => [...pan.map((channel) => fault('sensor-offset', channel, 6)), fault('sensor-open', 'ambientC')],
  ],
];

describe.each(['quillhaven-wash-house', 'marrow-skerry-bakehouse'])('a night of frost at %s', (name) => {
  const fitted = panChannels.filter((channel) => siteNamed(name).sensors[channel] !== undefined);

  it.each(rows)('with %s leaves no ice, though an operator wants the pan full', (_, faultsOf) => {
    const { mostIceKg, coldestC, reasons } = night(name, faultsOf(fitted));
    expect(mostIceKg).toBe(0);
    expect(coldestC).toBeGreaterThan(1);
    expect(reasons).toContain('frost-predicted');
    expect(reasons).not.toContain('internal-error');
  });
});
