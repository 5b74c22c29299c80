import { lowPass } from '../blocks/low-pass.ts';
import type { Situation } from '../situation.ts';
import type { EngineState } from '../state.ts';
import { trendMs } from '../want/trend.ts';
import { contactSample } from './contact.ts';
import { type ContactSums, noSums, type UpkeepMemory } from './memory.ts';

type Learnt = EngineState['learnt'];

export interface Judged {
  readonly upkeep: UpkeepMemory;
  readonly learnt: Learnt;
}

/** Rest and flow count once they have settled for so long [ms]; design choices. */
const restSettledMs = 1_500_000;
const flowSettledMs = 2_400_000;
/**
 * Less heat than this tells nothing of the contact [W/m2]: in what little there is, the error of two sensors is too
 * much, and under standing water so is what the warmer sheet loses by itself. Design choices.
 */
const leastFlowHeatWM2 = 100;
const leastRestHeatWM2 = 200;
/** So much time is summed up before it is judged [ms]; a design choice. */
const summedMs = 2_700_000;
/** The contact is poor when the sheet is this much warmer than the heat explains, and this many times. */
const poorK = 1.2;
const poorTimes = 1.5;
/** So many sums in a row are believed, since one may have met a day of broken cloud; a design choice. */
const believedInARow = 2;
/** A contact worse than this is poor, and nothing is learnt of it [Km2/W]: 60 W/m2K; a design choice. */
const worstKM2W = 1 / 60;
/** Share of a better and of a worse contact that is taken over at once. Design choices. */
const betterShare = 0.2;
const worseShare = 0.02;

/**
 * Sums up how the sheet stands above its water, and judges each sum against what was learnt. The excess is smoothed
 * as the trend of the water is, so that a cloud passes alike in both.
 */
export function judgeContact(judged: Judged, situation: Situation): Judged {
  const { upkeep } = judged;
  const sample = contactSample(situation);
  if (sample === null)
    return upkeep.sheetExcessK === null ? judged : { ...judged, upkeep: { ...upkeep, sheetExcessK: null } };
  const { state, elapsedMs, runMs } = situation;
  const changed = runMs - elapsedMs <= state.phase.sinceMs;
  const sheetExcessK = lowPass(changed ? null : upkeep.sheetExcessK, sample.excessK, elapsedMs, trendMs);
  const next = { ...judged, upkeep: { ...upkeep, sheetExcessK } };
  const resting = state.phase.name === 'resting';
  const settled = runMs - state.phase.sinceMs >= (resting ? restSettledMs : flowSettledMs);
  if (!settled || sample.heatWM2 < (resting ? leastRestHeatWM2 : leastFlowHeatWM2)) return next;
  return sumUp(next, resting ? 'restContact' : 'flowContact', sheetExcessK, sample.heatWM2, elapsedMs);
}

function sumUp(
  judged: Judged,
  slot: 'restContact' | 'flowContact',
  excessK: number,
  heatWM2: number,
  elapsedMs: number,
): Judged {
  const { upkeep, learnt } = judged;
  const before = upkeep[slot];
  const sums: ContactSums = {
    excessKMs: before.excessKMs + excessK * elapsedMs,
    heatWM2Ms: before.heatWM2Ms + heatWM2 * elapsedMs,
    forMs: before.forMs + elapsedMs,
    poorInARow: before.poorInARow,
  };
  if (sums.forMs < summedMs) return { ...judged, upkeep: { ...upkeep, [slot]: sums } };
  const name = `${slot}KM2W`;
  const poorContactK = beyondK(sums, learnt[name]);
  const poorInARow = poorContactK === null ? 0 : before.poorInARow + 1;
  const emptied = { ...upkeep, [slot]: { ...noSums, poorInARow } };
  if (poorContactK !== null)
    return { upkeep: poorInARow >= believedInARow ? { ...emptied, poorContactK } : emptied, learnt };
  // A contact that is found poor is not taken for the rule where none was learnt yet.
  const doubted =
    upkeep.poorContactK !== null || upkeep.restContact.poorInARow + upkeep.flowContact.poorInARow > 0;
  if (doubted && learnt[name] === undefined) return { upkeep: emptied, learnt };
  return { upkeep: { ...emptied, poorContactK: null }, learnt: learn(learnt, name, sums) };
}

/** How far the sheet stood above what its heat explains, where that is too much [K]. */
function beyondK({ excessKMs, heatWM2Ms, forMs }: ContactSums, known: number | undefined): number | null {
  const excessK = excessKMs / forMs;
  const explainedK = ((known ?? worstKM2W) * heatWM2Ms) / forMs;
  const poor =
    known === undefined
      ? excessK > explainedK
      : excessK >= explainedK + poorK && excessK >= explainedK * poorTimes;
  return poor ? excessK - explainedK : null;
}

function learn(learnt: Learnt, name: string, { excessKMs, heatWM2Ms }: ContactSums): Learnt {
  const now = excessKMs / heatWM2Ms;
  const known = learnt[name];
  if (known === undefined) return { ...learnt, [name]: now };
  return { ...learnt, [name]: known + (now - known) * (now < known ? betterShare : worseShare) };
}
