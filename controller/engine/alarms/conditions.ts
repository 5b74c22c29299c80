import type { AlarmCode } from '../../../shared-types/alarms.ts';
import { type Channel, channelMeaning } from '../../../shared-types/channels.ts';
import type { Feedback, Outputs } from '../../../shared-types/engine.ts';
import { unfollowedText } from '../explain/alarm-text.ts';
import { noFlowKindText } from '../explain/no-flow-text.ts';
import { isOutOfSeason, isSeasonNear } from '../hazards/air-lows.ts';
import { isFrostUnseen } from '../hazards/frost.ts';
import { daysToFrostSeason } from '../hazards/frost-season.ts';
import { linerHotC, scaldC } from '../hazards/heat.ts';
import { failuresToLock } from '../hazards/table.ts';
import { known, type Values } from '../known.ts';
import { canEmpty } from '../pan.ts';
import { isPumping, type Situation } from '../situation.ts';
import { fullFlowLMin } from '../watch/pump-signs.ts';
import { isDrawnLow, lacksForFill, neededMm, reservoirLeakMm, reservoirMm } from '../watch/reservoir.ts';
import { restLeakMmH } from '../watch/rest-level.ts';
import { runsOn } from '../watch/runs-on.ts';

/** What the conditions of the alarms are judged by. */
export interface AlarmGround {
  readonly situation: Situation;
  readonly feedback: Feedback | null;
  /** Outputs that were in force since the last step. */
  readonly outputsBefore: Outputs;
}

/** What a condition says while it holds: the numbers, and what the numbers cannot say. */
export interface Condition {
  readonly values: Values;
  readonly detail?: string;
}

/** `active` tells whether the alarm stands: a deadband holds it a little longer. */
type Judge = (situation: Situation, ground: AlarmGround, active: boolean) => Condition | null;

/** An alarm of the store's heat stands until the store is this much below where it came [K]; a design choice. */
const storeHotDeadbandK = 1;
/** A liner at its limit counts as such until it is this much below [K]; a design choice. */
const linerLimitDeadbandK = 3;
/** That the store scalds is said until it has cooled by so much [K]; a design choice. */
const scaldDeadbandK = 5;

const panChannels: readonly Channel[] = ['panOutletC', 'panSheetC'];

/** When each alarm's condition holds. */
export const conditions: Readonly<Record<AlarmCode, Judge>> = {
  'frost-danger': ({ state, facts, site, localDay }) => {
    const frost = state.frost.latched !== null || isFrostUnseen(facts, site, localDay);
    const held = !canEmpty(site) || state.water.overdue;
    if (!frost || !held || state.water.level === 'empty') return null;
    return { values: known({ panC: facts.coldestPanC }) };
  },
  'pan-sensors-failed': ({ facts }) => (facts.panC === null ? { values: {} } : null),
  'store-sensor-failed': ({ facts }) => (facts.storeBottomC === null ? { values: {} } : null),
  'sensor-failed': ({ facts }) => {
    if (facts.failed.length === 0) return null;
    const others = facts.failed.filter(
      (channel) => channel !== 'storeBottomC' && !(facts.panC === null && panChannels.includes(channel)),
    );
    if (others.length === 0) return null;
    const names = others.map((channel) => channelMeaning[channel].title).join(', ');
    return { values: { sensors: others.length }, detail: names };
  },
  'sensor-doubtful': doubted,
  'all-sensors-silent': ({ facts }) => (facts.allSilent ? { values: {} } : null),
  'fill-failed': (situation) => failed(situation, 'fill-failed'),
  'dry-running': (situation) => unmoved(situation, 'dry-running'),
  'no-flow': (situation) => unmoved(situation, 'no-flow'),
  'drain-stands-open': (situation) => failed(situation, 'drain-stands-open'),
  'water-lost': (situation) => failed(situation, 'water-lost'),
  'fill-locked': ({ state: { failure } }) =>
    failure.count >= failuresToLock ? { values: { failures: failure.count } } : null,
  'not-emptying': ({ state: { water }, facts }) =>
    water.overdue ? { values: known({ levelMm: facts.levelMm }) } : null,
  'liner-hot': linerHot,
  'liner-not-cooled': ({ state, facts: { hottestPanC }, site: { pan } }, _ground, active) =>
    hottestPanC !== null &&
    !isPumping(state) &&
    hottestPanC >= pan.linerLimitC - (active ? linerLimitDeadbandK : 0)
      ? { values: { panC: hottestPanC, linerLimitC: pan.linerLimitC } }
      : null,
  'scald-caution': ({ facts: { hottestStoreC } }, _ground, active) =>
    hottestStoreC !== null && hottestStoreC >= scaldC - (active ? scaldDeadbandK : 0)
      ? { values: { storeC: hottestStoreC } }
      : null,
  'frost-season-near': (situation) => {
    const { state, site, localDay } = situation;
    if (state.water.level === 'empty' || !isSeasonNear(situation)) return null;
    const days = isOutOfSeason(situation) ? null : daysToFrostSeason(site, localDay);
    return { values: known({ days }) };
  },
  'store-hot': ({ facts: { hottestStoreC }, site: { store } }, _ground, active) =>
    hottestStoreC !== null && hottestStoreC >= store.maximumC - (active ? storeHotDeadbandK : 0)
      ? { values: { storeC: hottestStoreC, maximumC: store.maximumC } }
      : null,
  'flow-low': ({ state: { upkeep, learnt }, site }) =>
    upkeep.lowFlowLMin === null
      ? null
      : { values: { flowLMin: upkeep.lowFlowLMin, fullFlowLMin: fullFlowLMin(site, learnt) } },
  'poor-contact': ({ state: { upkeep } }) =>
    upkeep.poorContactK === null ? null : { values: { excessK: upkeep.poorContactK } },
  leak: ({ state: { upkeep } }) => {
    const rateMmH = restLeakMmH(upkeep);
    const lackingMm = reservoirLeakMm(upkeep);
    return rateMmH === null && lackingMm === null ? null : { values: known({ rateMmH, lackingMm }) };
  },
  'reservoir-low': (situation) =>
    isDrawnLow(situation) || lacksForFill(situation)
      ? { values: known({ levelMm: reservoirMm(situation), neededMm: neededMm(situation) }) }
      : null,
  'output-not-followed': notFollowed,
  // Raised where an exception is caught, never by a condition.
  'internal-error': () => null,
};

function doubted({ state: { watch }, readings }: Situation): Condition | null {
  const names: string[] = [];
  for (const name in watch.doubts) {
    const channel = name as Channel;
    const reading = readings[channel];
    // What failed altogether has an alarm of its own.
    if (reading !== undefined && reading.quality !== 'failed') names.push(channelMeaning[channel].title);
  }
  return names.length === 0 ? null : { values: { sensors: names.length }, detail: names.join(', ') };
}

/** A hot liner asks nothing of a person while heat is dumped, as long as that helps. */
function linerHot({ state: { heat, outputs }, facts, site, settings }: Situation): Condition | null {
  const { dump } = heat;
  if (!heat.linerHot || outputs.heatDumpOn === true) return null;
  const values = known({ panC: facts.hottestPanC, linerHotC: linerHotC(site, settings) });
  return dump?.failed === true ? { values, detail: 'the heat dump does not cool it' } : { values };
}

function failed({ state: { failure } }: Situation, cause: AlarmCode): Condition | null {
  return failure.cause === cause ? { values: { failures: failure.count } } : null;
}

/** A pump that moved no water, with why as far as it was told. */
function unmoved(situation: Situation, cause: AlarmCode): Condition | null {
  const condition = failed(situation, cause);
  return condition && { ...condition, detail: noFlowKindText(situation.state.flow.kind) };
}

function notFollowed(situation: Situation, { feedback, outputsBefore }: AlarmGround): Condition | null {
  const { site, settings } = situation;
  const told = feedback !== null && feedback.ageMs <= settings.staleAfterS * 1000 ? feedback : null;
  const commanded = outputsBefore.pumpFraction;
  const pumpDiffers = runsOn(situation) || (told !== null && told.pumpFraction > 0 !== commanded > 0);
  const drainDiffers =
    site.drain === 'drain-valve' &&
    told !== null &&
    told.drainOpen !== null &&
    told.drainOpen !== outputsBefore.drainOpen;
  if (!pumpDiffers && !drainDiffers) return null;
  return {
    values: known({ commandedFraction: commanded, pumpFraction: told?.pumpFraction ?? null }),
    detail: unfollowedText(pumpDiffers, drainDiffers),
  };
}
