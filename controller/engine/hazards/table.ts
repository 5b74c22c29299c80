import type { ReasonCode } from '../../../shared-types/reasons.ts';
import { known, type Values } from '../known.ts';
import { canEmpty, canRest } from '../pan.ts';
import type { Goal, Situation } from '../situation.ts';
import type { FailureCause } from '../state.ts';
import { excessK } from '../watch/flow-bound.ts';
import { hasNoFlow } from '../watch/heat-flow.ts';
import { isDrawnLow, lacksForFill, neededMm, reservoirMm } from '../watch/reservoir.ts';
import { runsOn } from '../watch/runs-on.ts';
import { hasSunk } from '../watch/update.ts';
import { isOutOfSeason } from './air-lows.ts';
import { hasPumpedIntoDrain } from './drain-open.ts';
import { isFrostBlind, isFrostMeasured, isFrostUnseen } from './frost.ts';
import { outlastsNight } from './frost-night.ts';
import { fallToFrost } from './frost-trend.ts';
import { fullStoreGoal, linerHotC, storeLimitC } from './heat.ts';
import { dumpsHeat } from './heat-dump.ts';
import { hasRunDry } from './no-flow.ts';

/** Failures in a row after which only a person sets the loop going again. */
export const failuresToLock = 2;

/** One protection. */
export interface Hazard {
  readonly code: ReasonCode;
  /** The numbers of the hazard while it holds, else null. */
  readonly when: (situation: Situation) => Values | null;
  readonly goal: (situation: Situation) => Goal;
  /** Set where the hazard counts as a failure of the loop. */
  readonly fails?: FailureCause;
  readonly clears: string;
  /** Whether an operator may override it. */
  readonly override: 'never';
}

const empty = (): Goal => 'empty';
const rest = (): Goal => 'rest';
const override = 'never';

/** Every protection, the most severe first. The first that holds decides. */
export const hazards: readonly Hazard[] = [
  {
    code: 'dry-running',
    when: (situation) =>
      hasRunDry(situation)
        ? {
            dryS: seconds(situation, situation.state.timers.noFlowMs),
            noFlowKind: situation.state.flow.kind,
          }
        : null,
    goal: empty,
    fails: 'dry-running',
    clears: 'when the pump stands',
    override,
  },
  {
    code: 'no-flow',
    when: (situation) =>
      hasNoFlow(situation.state.flow, situation)
        ? known({ excessK: excessK(situation), noFlowKind: situation.state.flow.kind })
        : null,
    goal: empty,
    fails: 'no-flow',
    clears: 'when the pump stands',
    override,
  },
  {
    code: 'drain-stands-open',
    when: (situation) =>
      hasPumpedIntoDrain(situation)
        ? { openS: seconds(situation, situation.state.timers.drainOpenMs) }
        : null,
    goal: empty,
    fails: 'drain-stands-open',
    clears: 'when the pump stands',
    override,
  },
  {
    code: 'fill-failed',
    when: ({ state: { phase, water }, runMs, settings: { fillTimeoutS } }) =>
      phase.name === 'filling' && water.level !== 'full' && runMs - phase.sinceMs >= fillTimeoutS * 1000
        ? { fillTimeoutS }
        : null,
    goal: empty,
    fails: 'fill-failed',
    clears: 'when filling has ended',
    override,
  },
  {
    code: 'water-lost',
    when: (situation) => (hasLostWater(situation) ? known({ levelMm: situation.facts.levelMm }) : null),
    goal: empty,
    fails: 'water-lost',
    clears: 'when the pan runs empty',
    override,
  },
  {
    code: 'frost-measured',
    when: ({ state, facts, settings }) =>
      state.frost.keepWarmMs !== null || isFrostMeasured(state.frost, facts, settings)
        ? known({ panC: facts.coldestPanC, frostTemperatureC: settings.frostTemperatureC })
        : null,
    goal: ({ state }) => (state.frost.keepWarmMs === null ? 'empty' : 'run'),
    clears: 'when the pan is 1 K above the frost temperature and is no longer kept warm',
    override,
  },
  {
    code: 'frost-trend',
    when: (situation) => {
      const { frost } = situation.state;
      const fall = frost.latched === 'frost-trend' ? fallToFrost(situation, frost.fall) : null;
      return fall === null ? null : { ...fall };
    },
    goal: empty,
    clears: 'when the pan no longer falls so fast; then the release is waited for',
    override,
  },
  {
    code: 'frost-blind',
    when: ({ state, facts, settings }) =>
      isFrostBlind(state.frost, facts, settings)
        ? known({ ambientC: facts.ambientC, blindFrostAmbientC: settings.blindFrostAmbientC })
        : null,
    goal: empty,
    clears: 'when the air is warmer or a pan sensor works again',
    override,
  },
  {
    code: 'frost-all-sensors-failed',
    when: ({ facts, site, localDay }) => (isFrostUnseen(facts, site, localDay) ? {} : null),
    goal: empty,
    clears: 'when a pan sensor or the air sensor works again',
    override,
  },
  {
    // A pump that runs on is kept off an open drain, locked or not. Frost comes before it, and so does blindness,
    // in which frost would go unseen: the drain that is open then empties the pan as soon as the pump stops.
    code: 'pump-runs-on',
    when: (situation) =>
      runsOn(situation) && situation.facts.panC !== null && situation.facts.storeBottomC !== null
        ? { runS: seconds(situation, situation.state.flow.runsOnMs) }
        : null,
    goal: ({ site }) => (canRest(site) ? 'rest' : 'empty'),
    clears: 'when the pump stands',
    override,
  },
  {
    code: 'fill-failed-locked',
    when: ({ state: { failure } }) => (failure.count >= failuresToLock ? { failures: failure.count } : null),
    goal: () => 'lock',
    clears: 'when an operator asks for automatic',
    override,
  },
  {
    code: 'frost-waiting-release',
    when: ({ state: { frost }, runMs, settings }) =>
      frost.latched !== null
        ? {
            frostReleaseC: settings.frostReleaseC,
            frostReleaseMin: settings.frostReleaseMin,
            heldMin: frost.warmMs === null ? 0 : (runMs - frost.warmMs) / 60_000,
          }
        : null,
    goal: empty,
    clears: 'when the pan has held the release temperature for the release time',
    override,
  },
  {
    code: 'reservoir-low',
    when: (situation) =>
      isDrawnLow(situation) || lacksForFill(situation)
        ? known({ levelMm: reservoirMm(situation), neededMm: neededMm(situation) })
        : null,
    goal: empty,
    clears: 'when the reservoir holds what a fill needs',
    override,
  },
  {
    code: 'frost-season',
    when: (situation) =>
      situation.state.water.level !== 'full' && isOutOfSeason(situation)
        ? known({ panC: situation.facts.coldestPanC })
        : null,
    goal: rest,
    clears: 'when the frost season is over',
    override,
  },
  {
    code: 'frost-predicted',
    when: (situation) => {
      const { state, settings } = situation;
      const { nightC } = state.frost;
      if (nightC === null || (!canEmpty(situation.site) && state.water.level === 'full')) return null;
      return outlastsNight(situation, nightC) ? null : { nightC, frostNightC: settings.frostNightC };
    },
    goal: empty,
    clears: 'when the sun is up, or the sheet would stay 1 K warmer than that',
    override,
  },
  {
    code: 'sensors-failed',
    when: ({ facts }) =>
      facts.storeBottomC === null || facts.panC === null
        ? { storeFailed: Number(facts.storeBottomC === null), panFailed: Number(facts.panC === null) }
        : null,
    goal: empty,
    clears: 'when the pan and the store bottom can be read again',
    override,
  },
  {
    code: 'store-at-frost',
    when: ({ state: { frost }, facts, settings: { frostTemperatureC } }) =>
      frost.storeCold ? known({ storeC: facts.storeBottomC, frostTemperatureC }) : null,
    goal: empty,
    clears: 'when the store bottom is 1 K warmer than the frost temperature',
    override,
  },
  {
    code: 'dumping-heat',
    when: (situation) => {
      if (!dumpsHeat(situation)) return null;
      const { facts, site, settings } = situation;
      return known({
        panC: facts.hottestPanC,
        linerHotC: linerHotC(site, settings),
        storeC: facts.hottestStoreC,
      });
    },
    goal: () => 'run',
    clears: 'when the pan is 8 K below that, the store takes heat again, or the heat dump did not help',
    override,
  },
  {
    code: 'store-limit',
    when: ({ state: { heat }, facts, site, settings }) =>
      heat.storeFull && !heat.cooling
        ? known({ storeC: facts.hottestStoreC, storeLimitC: storeLimitC(site, settings) })
        : null,
    goal: fullStoreGoal,
    clears: 'when the store has cooled by the release difference',
    override,
  },
  {
    code: 'liner-heat',
    when: ({ state: { heat, water }, facts, site, settings }) =>
      heat.linerHot && water.level === 'full' && (facts.differenceK ?? 0) > 0
        ? known({ panC: facts.hottestPanC, linerHotC: linerHotC(site, settings) })
        : null,
    goal: () => 'run',
    clears: 'when the pan is 3 K below that, or no warmer than the store',
    override,
  },
];

/** A pan that rests has no water left, or one whose pump runs does not hold what it is given. */
function hasLostWater(situation: Situation): boolean {
  const { phase, water } = situation.state;
  if (runsOn(situation) || !canEmpty(situation.site)) return false;
  return (phase.name === 'resting' && water.level === 'empty') || hasSunk(situation);
}

/** How long what holds has held [s]; its begin is known, or it would not hold. */
function seconds({ runMs }: Situation, sinceMs: number | null): number {
  return (runMs - (sinceMs as number)) / 1000;
}
