import type { Channel } from '../../../../shared-types/channels.ts';
import type { Situation } from '../../situation.ts';
import { agree, type Comparison, saidBy } from './comparison.ts';
import { flows, gainBounds, isFlushed } from './gain.ts';

/**
 * Two sensors that nobody compared may disagree by 1.2 K; what hangs on a pipe outside shows a few hundredths
 * of the air besides, and a pipe loses some. What is beyond is a fault. Design choices.
 */
export const alikeK = 2;
const pipeK = 0.5;
/** The pipe from store to pan is flushed after this [ms]; a design choice. */
const pipeFlushedMs = 120_000;
/** It has to have been dark for this long before the pan's own warmth is gone [ms]; a design choice. */
const duskMs = 1_800_000;
/** Behind an exchanger it takes as long again until pan and store are alike [ms]; a design choice. */
const exchangedMs = 2 * 3_600_000;

/** The sensor of the water that the pump draws. */
export function sourceOf({ site }: Situation): Channel {
  return site.plumbing === 'reservoir' ? 'reservoirC' : 'storeBottomC';
}

/** While the pump runs, the inlet is as warm as the water that it draws. */
export const inletSource: Comparison = {
  name: 'inlet-source',
  looks: 5,
  looksToClear: 10,
  judge: (situation, darkMs) => {
    const { readings, state, runMs } = situation;
    const source = sourceOf(situation);
    const inletC = saidBy(readings, 'panInletC');
    const sourceC = saidBy(readings, source);
    const { phase } = state;
    if (inletC === null || sourceC === null || phase.name !== 'circulating') return null;
    if (runMs - phase.sinceMs < pipeFlushedMs || !flows(situation)) return null;
    if (Math.abs(inletC - sourceC) <= alikeK + pipeK) return agree;
    // The one with which the pan would gain what no pan gains; both where that does not tell.
    const outletC = saidBy(readings, 'panOutletC');
    if (outletC === null || !isFlushed(situation)) return ['panInletC', source];
    const isDark = (darkMs ?? 0) >= duskMs;
    const inletFits = fits(inletC, outletC, situation, isDark);
    if (inletFits === fits(sourceC, outletC, situation, isDark)) return ['panInletC', source];
    return inletFits ? [source] : ['panInletC'];
  },
};

/** True unless the pan's outlet stands further from this water than the sun of the day, or a night, can bring. */
function fits(coldC: number, outletC: number, situation: Situation, isDark: boolean): boolean {
  const { leastK, mostK } = gainBounds(situation, coldC, isDark);
  const gainK = outletC - coldC;
  return gainK >= leastK - alikeK && gainK <= mostK + alikeK;
}

/** In the dark nothing is gained: a pan that goes on standing above the store does so on paper only. */
export const gainInTheDark: Comparison = {
  name: 'gain-in-the-dark',
  looks: 15,
  looksToClear: 60,
  judge: (situation, darkMs) => {
    const { facts, site, state, runMs } = situation;
    const { panC, storeBottomC } = facts;
    if ((darkMs ?? 0) < duskMs || panC === null || storeBottomC === null) return null;
    if (!isFlushed(situation) || !flows(situation)) return null;
    if (site.plumbing === 'reservoir' && runMs - state.phase.sinceMs < exchangedMs) return null;
    const { mostK } = gainBounds(situation, storeBottomC, true);
    if (panC - storeBottomC <= mostK + alikeK) return agree;
    return wrongInTheDark(situation, panC, storeBottomC);
  },
};

/** Where another sensor of the pan's stream agrees with the pan, it is the store's that is wrong, and the other way round. */
function wrongInTheDark(situation: Situation, panC: number, storeC: number): readonly Channel[] {
  const { facts, readings } = situation;
  const pan: Channel = facts.panIsOutlet ? 'panOutletC' : 'panSheetC';
  const others: readonly Channel[] = facts.panIsOutlet ? ['panInletC', 'panSheetC'] : ['panInletC'];
  for (const other of others) {
    const otherC = saidBy(readings, other);
    if (otherC === null) continue;
    const nearPan = Math.abs(otherC - panC);
    const nearStore = Math.abs(otherC - storeC);
    if (nearPan <= alikeK && nearStore > alikeK) return ['storeBottomC'];
    if (nearStore <= alikeK && nearPan > alikeK) return [pan];
  }
  return [pan, 'storeBottomC'];
}
