import type { Totals } from '../../../shared-types/engine.ts';
import type { TrustedReadings } from '../../../shared-types/readings.ts';
import { assertNever } from '../assert-never.ts';
import { panHeatJK } from '../pan.ts';
import { good } from '../sense/facts.ts';
import type { Move } from '../sequence/advance.ts';
import { isPumping, type Situation } from '../situation.ts';
import type { EngineState, Phase, WaterMemory } from '../state.ts';

type MeterState = EngineState['meter'];

/**
 * Totals after the time since the last step, under the outputs that were in force in it.
 *
 * Heat is the trapezoid between the rates of two steps; nothing is counted across a gap longer than
 * `gapLimitS` or where a rate is not known. Gains and losses have totals of their own, so none falls.
 */
export function addUse(meter: MeterState, rateW: number | null, situation: Situation): MeterState {
  const { elapsedMs, settings, state, readings, site } = situation;
  const elapsedS = elapsedMs / 1000;
  if (elapsedS > settings.gapLimitS) return { ...meter, rateW };
  const heatJ = rateW === null || meter.rateW === null ? 0 : ((rateW + meter.rateW) / 2) * elapsedS;
  const { pumpFraction } = state.outputs;
  if (heatJ === 0 && pumpFraction === 0) return meter.rateW === rateW ? meter : { ...meter, rateW };
  const powerW = pumpFraction === 0 ? 0 : (good(readings.pumpPowerW) ?? site.pump.ratedPowerW * pumpFraction);
  const { total, dayStart } = meter;
  return {
    total: {
      heatHomeJ: heatJ > 0 ? total.heatHomeJ + heatJ : total.heatHomeJ,
      heatLostJ: heatJ < 0 ? total.heatLostJ - heatJ : total.heatLostJ,
      electricityJ: total.electricityJ + Math.max(0, powerW) * elapsedS,
      pumpRunS: total.pumpRunS + (pumpFraction > 0 ? elapsedS : 0),
      starts: total.starts,
      fills: total.fills,
    },
    dayStart,
    rateW,
  };
}

/** Totals after a change of phase: pump starts, proven fills, and the heat of an emptied pan. */
export function addMove(meter: MeterState, situation: Situation, { phase }: Move): MeterState {
  const before = situation.state.phase;
  if (phase.name === before.name) return meter;
  const starts = Number(isPumping({ phase }) && !isPumping({ phase: before }));
  const fills = Number(before.name === 'filling' && phase.name === 'circulating');
  const heatJ = phase.name === 'empty' ? emptiedHeatJ(situation) : 0;
  const total = addHeat(meter.total, heatJ);
  return { ...meter, total: { ...total, starts: total.starts + starts, fills: total.fills + fills } };
}

/** Heat that the pan's water brought back above what it was when it was drawn from the store [J]. */
function emptiedHeatJ({ state: { water }, site }: Situation): number {
  const { emptyingPanC, fillStoreC } = water;
  if (site.plumbing !== 'open-store' || emptyingPanC === null || fillStoreC === null) return 0;
  return panHeatJK(site, (emptyingPanC + fillStoreC) / 2) * (emptyingPanC - fillStoreC);
}

function addHeat(total: Totals, heatJ: number): Totals {
  if (heatJ === 0) return total;
  return heatJ > 0
    ? { ...total, heatHomeJ: total.heatHomeJ + heatJ }
    : { ...total, heatLostJ: total.heatLostJ - heatJ };
}

/** What has to be kept of the pan's water at a change of phase, for the heat of its next emptying. */
export function waterAfterMove(water: WaterMemory, situation: Situation, { phase }: Move): WaterMemory {
  const { readings, state } = situation;
  const before = state.phase;
  if (phase.name === before.name) return water;
  // What the pan did under another phase says nothing of how it will go on.
  const kept = { ...water, trendC: null };
  switch (phase.name) {
    case 'filling':
      return { ...kept, fillStoreC: good(readings.storeBottomC), fillStoreMs: 0, emptyingPanC: null };
    case 'circulating':
      return before.name === 'filling' ? { ...kept, level: 'full' } : kept;
    case 'emptying':
    case 'stopped':
      if (before.name === 'emptying') return kept;
      return { ...kept, emptyingPanC: water.level === 'full' ? panWaterC(situation) : null };
    case 'empty':
      return { ...kept, fillStoreC: null, fillStoreMs: 0, emptyingPanC: null };
    case 'resting':
      return { ...kept, emptyingPanC: null };
    default:
      return assertNever(phase);
  }
}

/**
 * Mean of the pan's good readings [°C]: its water warms from one end to the other. The inlet belongs to
 * them while the pump runs; once it stands, the water in that pipe goes its own way.
 */
function panWaterC({ readings, state }: Situation): number | null {
  const { panOutletC, panSheetC, panInletC } = readings;
  const inlet = isPumping(state) ? panInletC : undefined;
  const known = [panOutletC, panSheetC, inlet].map(good).filter((value) => value !== null);
  return known.length === 0 ? null : known.reduce((sum, value) => sum + value, 0) / known.length;
}

/** Carries the mean store bottom through a filling: that is the temperature of the water drawn. */
export function meanFillStore(
  water: WaterMemory,
  phase: Phase,
  readings: TrustedReadings,
  elapsedMs: number,
): WaterMemory {
  if (phase.name !== 'filling') return water;
  const storeC = good(readings.storeBottomC);
  const knownMs = water.fillStoreMs + elapsedMs;
  if (storeC === null || knownMs === 0) return water;
  const fillStoreC = ((water.fillStoreC ?? 0) * water.fillStoreMs + storeC * elapsedMs) / knownMs;
  return { ...water, fillStoreC, fillStoreMs: knownMs };
}

/** The totals of a local day begin where those of the day before ended. */
export function beginDay(meter: MeterState): MeterState {
  return { ...meter, dayStart: meter.total };
}

/** Totals since the local day began. */
export function since(total: Totals, start: Totals): Totals {
  return {
    heatHomeJ: total.heatHomeJ - start.heatHomeJ,
    heatLostJ: total.heatLostJ - start.heatLostJ,
    electricityJ: total.electricityJ - start.electricityJ,
    pumpRunS: total.pumpRunS - start.pumpRunS,
    starts: total.starts - start.starts,
    fills: total.fills - start.fills,
  };
}
