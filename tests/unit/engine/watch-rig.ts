import { initialState, safeOutputs } from '../../../controller/engine/index.ts';
import { factsOf } from '../../../controller/engine/sense/facts.ts';
import type { Situation } from '../../../controller/engine/situation.ts';
import type { Channel } from '../../../shared-types/channels.ts';
import type { TrustedReading } from '../../../shared-types/readings.ts';
import type { Site } from '../../../shared-types/site.ts';
import {
  allSensors,
  circulatingLoop,
  emptyLoop,
  type Loop,
  makeSite,
  quickSettings,
  restingLoop,
} from './rig.ts';

/** A loop of which only sheet, store and air are measured; its pan empties when the pump stops. */
export const scarce = makeSite('pump-stop', ['panSheetC', 'storeBottomC', 'storeTopC', 'ambientC']);

/** Fills and circulates; the sheet stands `excessK` above the store, and the settling is over. */
export function hotLoop(excessK: number, site = scarce): Loop {
  const loop = circulatingLoop(site).set({ panSheetC: 20 + excessK, panOutletC: 20 + excessK });
  return loop.run(1200, 10);
}

export const level = makeSite('drain-valve', allSensors);

/** A loop that has learnt its flow of 20 L/min at 50 W, and then moves `flowLMin`. */
export function flowLoop(flowLMin: number, forS: number): Loop {
  const loop = circulatingLoop(level).set({ pumpPowerW: 50 });
  loop.ask({ kind: 'run-pump', minutes: 120 });
  loop.run(1200, 10);
  return loop.set({ flowLMin }).run(forS, 10);
}

/** A full pan that rests for hours and sinks by so much an hour. */
export function sinkingLoop(mmH: number, hours: number): Loop {
  const loop = restingLoop(level, { emptyAfterMin: 600 });
  for (let s = 0; s < hours * 3600; s += 10)
    loop.set({ panLevelMm: 40 - (mmH * Math.max(0, s - 600)) / 3600 }).step(10);
  return loop;
}

/** A full pan that rests and warms by 4 K an hour, so that 186 W/m2 pass, under a sheet so much warmer. */
export function contactLoop(loop: Loop, excessK: number, hours: number): Loop {
  const fromC = Number(loop.values.panOutletC);
  for (let s = 0; s < hours * 3600; s += 10) {
    const panC = fromC + (5 * s) / 3600;
    loop.set({ panOutletC: panC, panSheetC: panC + excessK, storeBottomC: panC + 1, storeTopC: panC + 2 });
    loop.step(10);
  }
  return loop;
}

const drainBack: readonly Channel[] = ['panOutletC', 'storeBottomC', 'reservoirC', 'reservoirLevelMm'];
export const reservoirSite = makeSite('pump-stop', drainBack, { plumbing: 'reservoir' });

/** A drain-back loop whose pan stands empty, with so much water in its reservoir. */
export function reservoirLoop(reservoirLevelMm: number): Loop {
  return emptyLoop(reservoirSite).set({ reservoirLevelMm, reservoirC: 20 }).run(1200, 10);
}

/** The same once it fills. */
export function fillingReservoir(reservoirLevelMm: number): Loop {
  return reservoirLoop(reservoirLevelMm).set({ panOutletC: 40 }).until('filling');
}

export interface Scene {
  readonly site?: Site;
  readonly state?: object;
  readonly values?: Readonly<Partial<Record<Channel, number | TrustedReading>>>;
  readonly runMs?: number;
  readonly elapsedMs?: number;
  readonly sunHeightDeg?: number | null;
}

/** What one rule is given: a loop that circulates at full speed for an hour, with what differs from that. */
export function situationOf(scene: Scene = {}): Situation {
  const { site = level, values = {}, runMs = 3_600_000, elapsedMs = 5000, sunHeightDeg = 60 } = scene;
  const state = {
    ...initialState(),
    phase: { name: 'circulating', sinceMs: 0, afterFill: false } as const,
    outputs: { ...safeOutputs, pumpFraction: 1, drainOpen: false },
    water: { ...initialState().water, level: 'full' as const },
    ...scene.state,
  };
  const readings = Object.fromEntries(
    Object.entries(values).map(([channel, value]) => [
      channel,
      typeof value === 'number' ? { quality: 'good' as const, value, ageMs: 0 } : value,
    ]),
  );
  const settings = quickSettings;
  return {
    ...{ site, state, runMs, elapsedMs, sunHeightDeg, readings, settings },
    ...{ localDay: null, drainSays: null, facts: factsOf(readings, state.learnt) },
  };
}
