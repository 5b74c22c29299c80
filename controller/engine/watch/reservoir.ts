import { heldFor, hold } from '../blocks/hold.ts';
import { lowPass } from '../blocks/low-pass.ts';
import { good } from '../sense/facts.ts';
import { isPumping, type Situation } from '../situation.ts';
import type { Judged } from './judge-contact.ts';
import type { UpkeepMemory } from './memory.ts';

/** Time constant of the reservoir's level [ms]. */
const smoothingMs = 60_000;
/** After this time all water of an emptied pan has run home, and a full loop has settled [ms]. */
const settledMs = 600_000;
/** Water that has to stand above the pump's suction, lest it draws air [mm]; a design choice. */
const suctionMm = 30;
/** For so long the level has to be below that under a running pump [ms]; a design choice. */
const shortHoldMs = 10_000;
/** A reservoir lacks water from this on, over what a fill takes out of it, and at least [mm]; design choices. */
const lackingFraction = 0.04;
const leastLackingMm = 25;
/** Emptyings in a row that have to lack it: water may have been on its way once. */
const lackingEmptyings = 2;
/** Share by which what a fill takes is learnt. */
const learnShare = 0.2;

/** Level of the reservoir; null where there is none, or it is not known. */
export function reservoirMm({ readings, site }: Situation): number | null {
  return site.plumbing === 'reservoir' ? good(readings.reservoirLevelMm) : null;
}

/** Since when the pump runs with too little water above its suction. */
export function shortSince(before: number | null, situation: Situation): number | null {
  const levelMm = reservoirMm(situation);
  const short = isPumping(situation.state) && levelMm !== null && levelMm < suctionMm;
  return hold(before, short, situation.runMs);
}

/** True when the running pump is about to draw air from its reservoir. */
export function isDrawnLow({ state, runMs }: Situation): boolean {
  return isPumping(state) && heldFor(state.flow.shortMs, runMs, shortHoldMs);
}

/** Level that the next fill needs [mm]; null where it is not known. */
export function neededMm({ state }: Situation): number | null {
  const { upkeep, learnt } = state;
  const { reservoirDropMm } = learnt;
  const learntMm = reservoirDropMm === undefined ? null : reservoirDropMm + suctionMm;
  return upkeep.neededMm === null || learntMm === null
    ? (upkeep.neededMm ?? learntMm)
    : Math.max(upkeep.neededMm, learntMm);
}

/** True when the reservoir of a pan that is or runs empty does not hold what the next fill needs. */
export function lacksForFill(situation: Situation): boolean {
  const { phase, upkeep } = situation.state;
  if (phase.name === 'resting' || isPumping(situation.state)) return false;
  const needMm = neededMm(situation);
  return needMm !== null && upkeep.reservoirMm !== null && upkeep.reservoirMm < needMm;
}

/** Keeps the book of a drain-back reservoir: what stands in it before each fill, and what a fill takes. */
export function updateReservoir(judged: Judged, situation: Situation): Judged {
  const levelMm = reservoirMm(situation);
  if (levelMm === null) return judged;
  const { phase } = situation.state;
  const heldMs = situation.runMs - phase.sinceMs;
  if (isDrawnLow(situation)) return { ...judged, upkeep: needsMore(judged.upkeep) };
  if (heldMs < settledMs) return judged;
  if (phase.name === 'circulating') return learnDrop(judged, levelMm, situation);
  if (phase.name !== 'empty') return judged;
  const before = heldMs - situation.elapsedMs < settledMs ? null : judged.upkeep.reservoirMm;
  const smoothMm = lowPass(before, levelMm, situation.elapsedMs, smoothingMs);
  const next = { ...judged, upkeep: { ...judged.upkeep, reservoirMm: smoothMm } };
  return isCounted(heldMs, situation.elapsedMs) ? countLack(next, smoothMm) : next;
}

/** What stood there before this fill was not enough. */
function needsMore(upkeep: UpkeepMemory): UpkeepMemory {
  const { reservoirMm, neededMm } = upkeep;
  if (reservoirMm === null) return upkeep;
  const moreMm = reservoirMm + suctionMm;
  return neededMm !== null && neededMm >= moreMm ? upkeep : { ...upkeep, neededMm: moreMm };
}

function learnDrop(judged: Judged, levelMm: number, { elapsedMs, runMs, state }: Situation): Judged {
  const { upkeep, learnt } = judged;
  const atOnce = runMs - state.phase.sinceMs - elapsedMs < settledMs;
  if (!atOnce || upkeep.reservoirMm === null || state.water.level !== 'full') return judged;
  const dropMm = upkeep.reservoirMm - levelMm;
  if (dropMm <= 0) return judged;
  const known = learnt['reservoirDropMm'] ?? dropMm;
  return {
    upkeep: { ...upkeep, neededMm: null },
    learnt: { ...learnt, reservoirDropMm: known + (dropMm - known) * learnShare },
  };
}

/** An emptying counts once, when its level has been smoothed for as long again. */
function isCounted(heldMs: number, elapsedMs: number): boolean {
  const atMs = settledMs + 5 * smoothingMs;
  return heldMs >= atMs && heldMs - elapsedMs < atMs;
}

function countLack({ upkeep, learnt }: Judged, levelMm: number): Judged {
  const fullMm = learnt['reservoirFullMm'];
  if (fullMm === undefined || levelMm > fullMm)
    return {
      upkeep: { ...upkeep, lackingMm: 0, lackingTimes: 0 },
      learnt: { ...learnt, reservoirFullMm: levelMm },
    };
  const lackingMm = fullMm - levelMm;
  const mostMm = Math.max(leastLackingMm, lackingFraction * (learnt['reservoirDropMm'] ?? 0));
  const lackingTimes = lackingMm >= mostMm ? upkeep.lackingTimes + 1 : 0;
  return { upkeep: { ...upkeep, lackingMm, lackingTimes }, learnt };
}

/** What the reservoir lacks [mm], where it has lacked it for some emptyings; else null. */
export function reservoirLeakMm({ lackingMm, lackingTimes }: UpkeepMemory): number | null {
  return lackingTimes >= lackingEmptyings ? lackingMm : null;
}
