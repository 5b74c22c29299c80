import type { Totals } from '../../../shared-types/engine.ts';
import type { TrustedReadings } from '../../../shared-types/readings.ts';
import type { Site } from '../../../shared-types/site.ts';
import { assertNever } from '../assert-never.ts';
import { good } from '../sense/facts.ts';
import type { Move } from '../sequence/advance.ts';
import { isPumping, type Situation } from '../situation.ts';
import type { EngineState, Phase, WaterMemory } from '../state.ts';
import { emptiedHeatJ, filledAfter, overfilledHeatJ, panWaterC } from './emptied.ts';
import { sourceOf } from './ends.ts';
import type { HeatReading } from './heat-rate.ts';

type MeterState = EngineState['meter'];

/**
 * Totals after the time since the last step, under the outputs that were in force in it.
 *
 * Heat is the trapezoid between the rates of two steps; nothing is counted across a gap longer than
 * `gapLimitS` or where a rate is not known. Gains and losses have totals of their own, so none falls.
 */
export function addUse(meter: MeterState, heat: HeatReading, situation: Situation): MeterState {
  const { elapsedMs, settings, state } = situation;
  const { rateW } = heat;
  const elapsedS = elapsedMs / 1000;
  const filledL = filledAfter(meter.filledL, situation);
  if (elapsedS > settings.gapLimitS) return { ...meter, rateW };
  const heatJ = rateW === null || meter.rateW === null ? 0 : ((rateW + meter.rateW) / 2) * elapsedS;
  const { pumpFraction } = state.outputs;
  if (heatJ === 0 && pumpFraction === 0) return meter.rateW === rateW ? meter : { ...meter, rateW };
  const { total, dayStart, estimatedJ } = meter;
  return {
    total: {
      heatHomeJ: total.heatHomeJ + Math.max(0, heatJ),
      heatLostJ: total.heatLostJ + Math.max(0, -heatJ),
      electricityJ: total.electricityJ + powerW(situation) * elapsedS,
      pumpRunS: total.pumpRunS + (pumpFraction > 0 ? elapsedS : 0),
      starts: total.starts,
      fills: total.fills,
    },
    dayStart,
    estimatedJ: heat.estimated ? estimatedJ + Math.max(0, heatJ) : estimatedJ,
    filledL,
    night: meter.night,
    rateW,
  };
}

/** Electric power of the pump [W]: as measured, else by the cube of its speed (affinity laws, textbook). */
export function powerW({ state, readings, site }: Situation): number {
  const { pumpFraction } = state.outputs;
  if (pumpFraction === 0) return 0;
  return Math.max(0, good(readings.pumpPowerW) ?? site.pump.ratedPowerW * pumpFraction ** 3);
}

/** Totals after a change of phase: pump starts, proven fills, and the heat of an emptied pan. */
export function addMove(meter: MeterState, situation: Situation, { phase }: Move): MeterState {
  const before = situation.state.phase;
  if (phase.name === before.name) return meter;
  const starts = Number(isPumping({ phase }) && !isPumping({ phase: before }));
  const filled = before.name === 'filling' && phase.name === 'circulating';
  const heatJ = filled ? overfilledHeatJ(situation) : phase.name === 'empty' ? emptiedHeatJ(situation) : 0;
  const { total } = meter;
  const guessed = filled || situation.site.sensors.panOutletC === undefined;
  return {
    ...meter,
    total: {
      ...total,
      heatHomeJ: total.heatHomeJ + Math.max(0, heatJ),
      heatLostJ: total.heatLostJ + Math.max(0, -heatJ),
      starts: total.starts + starts,
      fills: total.fills + Number(filled),
    },
    estimatedJ: guessed ? meter.estimatedJ + Math.max(0, heatJ) : meter.estimatedJ,
    filledL: phase.name === 'filling' ? 0 : meter.filledL,
  };
}

/** What has to be kept of the pan's water at a change of phase, for the heat of its next emptying. */
export function waterAfterMove(water: WaterMemory, situation: Situation, { phase }: Move): WaterMemory {
  const { readings, state, site } = situation;
  const before = state.phase;
  if (phase.name === before.name) return water;
  // What the pan did under another phase says nothing of how it will go on.
  const kept = { ...water, trendC: null };
  switch (phase.name) {
    case 'filling':
      return { ...kept, fillStoreC: good(readings[sourceOf(site)]), fillStoreMs: 0, emptyingPanC: null };
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
 * Carries the mean temperature of the water drawn through a filling: at the inlet, by which the pan is judged
 * later, else at the source.
 */
export function meanFillStore(
  water: WaterMemory,
  phase: Phase,
  readings: TrustedReadings,
  elapsedMs: number,
  site: Site,
): WaterMemory {
  if (phase.name !== 'filling') return water;
  const drawnC = good(readings.panInletC) ?? good(readings[sourceOf(site)]);
  const knownMs = water.fillStoreMs + elapsedMs;
  if (drawnC === null || knownMs === 0) return water;
  const fillStoreC = ((water.fillStoreC ?? 0) * water.fillStoreMs + drawnC * elapsedMs) / knownMs;
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
