import type { TrustedReading } from '../../../shared-types/readings.ts';
import type { Site } from '../../../shared-types/site.ts';
import { good } from '../sense/facts.ts';
import type { Situation } from '../situation.ts';
import type { EngineState } from '../state.ts';

/** A flow below this share of the pump's rating, at its speed, moves no water; a design choice. */
export const leastFlowFraction = 0.1;
/** A pump that draws less than this share of its rating does not turn; a design choice. */
const nonePowerFraction = 0.05;
/** Below this share of what it draws in the full loop it turns in air; a design choice. */
const airPowerFraction = 0.5;
/** Share of a pump's power that does not depend on its speed (from memory, in the usual order of size). */
const idlePowerFraction = 0.2;

/** Flow at full speed: as it was learnt, else as it is rated [L/min]. */
export function fullFlowLMin(site: Site, learnt: EngineState['learnt']): number {
  return learnt['fullFlowLMin'] ?? site.pump.ratedFlowLMin;
}

/** A flow below this moves no water at the speed in force [L/min]. */
export function leastFlowLMin({ state, site }: Situation): number {
  return leastFlowFraction * site.pump.ratedFlowLMin * state.outputs.pumpFraction;
}

type UsableReading = Exclude<TrustedReading, { quality: 'failed' }>;

/** The same reading if it was taken after the pump changed last: one from before proves nothing. */
export function takenSince(
  reading: TrustedReading | undefined,
  { state, runMs }: Pick<Situation, 'state' | 'runMs'>,
  afterMs = 0,
): UsableReading | undefined {
  if (reading === undefined || reading.quality === 'failed') return undefined;
  return runMs - reading.ageMs >= state.pump.sinceMs + afterMs ? reading : undefined;
}

/** What the power of the commanded pump says of it; null where nothing tells. */
export function powerSays(situation: Situation): 'none' | 'low' | 'usual' | null {
  const { readings, state, site } = situation;
  const powerW = good(takenSince(readings.pumpPowerW, situation));
  if (powerW === null) return null;
  const { pumpFraction } = state.outputs;
  if (powerW < nonePowerFraction * site.pump.ratedPowerW) return 'none';
  const fullW = state.learnt['fullPowerW'];
  if (fullW === undefined) return 'usual';
  const speedShare = idlePowerFraction + (1 - idlePowerFraction) * pumpFraction ** 3;
  return powerW < airPowerFraction * fullW * speedShare ? 'low' : 'usual';
}
