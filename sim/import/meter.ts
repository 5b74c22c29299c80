import { sourceOf } from '../../controller/engine/meter/ends.ts';
import { streamHeatW } from '../../controller/engine/water.ts';
import type { Channel } from '../../shared-types/channels.ts';
import type { Totals } from '../../shared-types/engine.ts';
import type { Site } from '../../shared-types/site.ts';
import { type BareStep, type DaySteps, holeMs } from './steps.ts';

/** What an imported day brought home. Null: its channels do not tell. */
export interface DayUse {
  /** Totals since the day began, step by step; what is not to be told stays 0. */
  readonly totals: readonly Totals[];
  readonly heatHomeJ: number | null;
  readonly heatLostJ: number | null;
  readonly electricityJ: number | null;
  readonly pumpRunS: number;
  readonly starts: number;
  /** Time of the day that its steps cover [ms]. */
  readonly coveredMs: number;
}

/** Share of the pump's running time in which a rate has to be known for its sum to be told. A design choice. */
const toldFraction = 0.95;

const noTotals: Totals = {
  heatHomeJ: 0,
  heatLostJ: 0,
  electricityJ: 0,
  pumpRunS: 0,
  starts: 0,
  fills: 0,
};

/**
 * Sums up a day by the rules of the controller's own meter: heat is the trapezoid between the rates of two
 * steps, at the same boundary and with the same water. Other than there, a rate counts only with a measured
 * flow and outlet, and as long as the pump runs: whether the pan was full nobody knows.
 */
export function dayUseOf(day: DaySteps, site: Site): DayUse {
  const longestMs = holeMs(day);
  const totals: Totals[] = [];
  let total = noTotals;
  let [coveredMs, heatKnownMs, powerKnownMs, runMs] = [0, 0, 0, 0];
  let before: Metered | undefined;
  for (const step of day.steps) {
    const now = meteredAt(step, site);
    const spanMs = step.input.elapsedMs ?? Number.POSITIVE_INFINITY;
    if (before !== undefined && spanMs <= longestMs) {
      coveredMs += spanMs;
      const ranMs = before.runs || now.runs ? spanMs : 0;
      runMs += ranMs;
      if (before.rateW !== null && now.rateW !== null) heatKnownMs += ranMs;
      if (now.powerW !== null) powerKnownMs += ranMs;
      total = added(total, before, now, spanMs / 1000);
    }
    if (before !== undefined && now.runs && !before.runs) total = { ...total, starts: total.starts + 1 };
    totals.push(total);
    before = now;
  }
  const told = (knownMs: number, channels: readonly Channel[]) =>
    runMs > 0 ? knownMs >= toldFraction * runMs : day.steps.some((step) => hasAll(step, channels));
  const heatTold = told(heatKnownMs, ['flowLMin', 'panOutletC']);
  return {
    ...{ totals, coveredMs, pumpRunS: total.pumpRunS, starts: total.starts },
    heatHomeJ: heatTold ? total.heatHomeJ : null,
    heatLostJ: heatTold ? total.heatLostJ : null,
    electricityJ: told(powerKnownMs, ['pumpPowerW']) ? total.electricityJ : null,
  };
}

/** What the meter reads at a step. */
interface Metered {
  readonly runs: boolean;
  readonly rateW: number | null;
  readonly powerW: number | null;
}

function meteredAt({ input: { readings }, outputs }: BareStep, site: Site): Metered {
  const runs = outputs.pumpFraction > 0;
  const powerW = readings.pumpPowerW?.value ?? null;
  if (!runs) return { runs, rateW: 0, powerW };
  const flowLMin = readings.flowLMin?.value ?? null;
  const hotC = readings.panOutletC?.value ?? null;
  const coldC = (readings.panInletC ?? readings[sourceOf(site)])?.value ?? null;
  if (flowLMin === null || hotC === null || coldC === null) return { runs, rateW: null, powerW };
  return { runs, rateW: streamHeatW(Math.max(0, flowLMin), hotC, coldC, coldC), powerW };
}

function added(total: Totals, before: Metered, now: Metered, spanS: number): Totals {
  const heatJ = before.rateW === null || now.rateW === null ? 0 : ((before.rateW + now.rateW) / 2) * spanS;
  return {
    ...total,
    heatHomeJ: total.heatHomeJ + Math.max(0, heatJ),
    heatLostJ: total.heatLostJ + Math.max(0, -heatJ),
    electricityJ: total.electricityJ + (before.runs ? Math.max(0, now.powerW ?? 0) * spanS : 0),
    pumpRunS: total.pumpRunS + (before.runs ? spanS : 0),
  };
}

const hasAll = ({ input: { readings } }: BareStep, channels: readonly Channel[]) =>
  channels.every((channel) => readings[channel] !== undefined);
