import { factsOf } from '../../../controller/engine/sense/facts.ts';
import type { Command, Goal, Situation } from '../../../controller/engine/situation.ts';
import { type EngineState, initialState, type WaterLevel } from '../../../controller/engine/state.ts';
import type { Channel } from '../../../shared-types/channels.ts';
import type { TrustedReading, TrustedReadings } from '../../../shared-types/readings.ts';
import { makeSite, quickSettings } from './rig.ts';

/** Made once, since its check takes far longer than any rule. */
const usualSite = makeSite('drain-valve');

/** Steady time of every situation here [ms]. */
export const nowMs = 10_000_000;

/** A number stands for a good reading. */
export type Told = Partial<Record<Channel, number | TrustedReading>>;

export interface Given extends Partial<Omit<Situation, 'state' | 'facts' | 'readings'>> {
  readonly state?: Partial<EngineState>;
  readonly level?: WaterLevel;
  readonly told?: Told;
}

/** What one rule is asked about: a loop with a drain valve at rest, but for what is given. */
export function situationOf({ state = {}, level, told = {}, ...rest }: Given = {}): Situation {
  const readings = Object.fromEntries(
    Object.entries(told).map(([channel, value]) => [
      channel,
      typeof value === 'number' ? { quality: 'good', value, ageMs: 0 } : value,
    ]),
  ) as TrustedReadings;
  const whole = { ...initialState(), runMs: nowMs, ...state };
  return {
    state: level === undefined ? whole : { ...whole, water: { ...whole.water, level } },
    runMs: nowMs,
    elapsedMs: 5000,
    localDay: '2031-06-21',
    sunHeightDeg: 40,
    readings,
    facts: factsOf(readings, whole.learnt),
    drainSays: null,
    site: usualSite,
    settings: quickSettings,
    ...rest,
  };
}

/** A demand of nobody in particular. */
export function commandOf(goal: Goal, changes: Partial<Command> = {}): Command {
  return {
    goal,
    cause: { code: 'operator-run', values: { leftMin: 5 } },
    urgent: false,
    by: 'want',
    ...changes,
  };
}
