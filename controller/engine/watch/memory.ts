import { amount, type Check, finiteOrNull, flag, record } from '../checks.ts';
import { finite } from '../input.ts';

/** The warmest source and the strongest sun of the running stretch of circulation, and of the one before. */
export interface FlowBound {
  readonly sinceMs: number;
  readonly sourceC: number;
  readonly sunWM2: number;
  readonly sourceBeforeC: number;
  readonly sunBeforeWM2: number;
}

/** What is watched of the water that moves, or does not. Times are steady. */
export interface FlowMemory {
  /** The pump was commanded when this was brought up last. */
  readonly pumping: boolean;
  readonly bound: FlowBound | null;
  /** Since when the pan stands too far above its source, and its temperature then [°C]. */
  readonly hotMs: number | null;
  readonly hotC: number | null;
  /** Inlet that stays away from its source and does not move, and since when [°C]. */
  readonly stillInletC: number | null;
  readonly stillMs: number | null;
  /** A number of `noFlowKinds`: why no water moved when the pump was stopped for it last. */
  readonly kind: number;
  /** Since when the pump is seen to run although it is off. */
  readonly runsOnMs: number | null;
  /** Smoothed flow and power at full speed, and how long they were smoothed. */
  readonly flowLMin: number | null;
  readonly powerW: number | null;
  readonly smoothedMs: number;
  /** The filling pump has come to move water. */
  readonly primed: boolean;
  /** Since when the flow, the level under a running pump, or the level of the reservoir is too low. */
  readonly lowMs: number | null;
  readonly sinksMs: number | null;
  readonly shortMs: number | null;
}

/** Sheet above its water, and the heat that passed between them, summed over a time [K ms, W/m2 ms, ms]. */
export interface ContactSums {
  readonly excessKMs: number;
  readonly heatWM2Ms: number;
  readonly forMs: number;
  /** How many of the sums before this were found poor, one after the other. */
  readonly poorInARow: number;
}

/** What is kept of the loop's upkeep for days: it outlives a restart. */
export interface UpkeepMemory {
  /** The flow that was found to be low [L/min]; null while it is well. */
  readonly lowFlowLMin: number | null;
  /** Contact of the sheet with resting and with moving water, as far as it is summed up. */
  readonly restContact: ContactSums;
  readonly flowContact: ContactSums;
  /** Sheet above its water, smoothed [K]; null while nothing is to be told of it. */
  readonly sheetExcessK: number | null;
  /** Excess over what the heat explains when it was last too much [K]; null: it was not. */
  readonly poorContactK: number | null;
  /** Level of the resting pan, smoothed, and where its book stands open [mm, steady ms]. */
  readonly restMm: number | null;
  readonly restFromMm: number | null;
  readonly restFromMs: number;
  /** What the resting pan lost in the time that was booked [mm, ms]. */
  readonly lostMm: number;
  readonly lostMs: number;
  /** Level of the reservoir while the pan stands empty [mm]; what it lacks, for how many emptyings in a row. */
  readonly reservoirMm: number | null;
  readonly lackingMm: number;
  readonly lackingTimes: number;
  /** Level that the reservoir needs before the next fill [mm]; null where it is not known. */
  readonly neededMm: number | null;
}

export const calmFlow: FlowMemory = {
  pumping: false,
  bound: null,
  hotMs: null,
  hotC: null,
  stillInletC: null,
  stillMs: null,
  kind: 0,
  runsOnMs: null,
  flowLMin: null,
  powerW: null,
  smoothedMs: 0,
  primed: false,
  lowMs: null,
  sinksMs: null,
  shortMs: null,
};

export const noSums: ContactSums = { excessKMs: 0, heatWM2Ms: 0, forMs: 0, poorInARow: 0 };

export const newUpkeep: UpkeepMemory = {
  lowFlowLMin: null,
  restContact: noSums,
  flowContact: noSums,
  sheetExcessK: null,
  poorContactK: null,
  restMm: null,
  restFromMm: null,
  restFromMs: 0,
  lostMm: 0,
  lostMs: 0,
  reservoirMm: null,
  lackingMm: 0,
  lackingTimes: 0,
  neededMm: null,
};

const isBound: Check = (value) => {
  if (value === null) return true;
  const bound = record(value);
  return (
    bound !== null &&
    finite(bound['sinceMs']) &&
    finite(bound['sourceC']) &&
    finite(bound['sunWM2']) &&
    finite(bound['sourceBeforeC']) &&
    finite(bound['sunBeforeWM2'])
  );
};

export const isFlow: Check = (value) => {
  const flow = record(value);
  return (
    flow !== null &&
    flag(flow['pumping']) &&
    isBound(flow['bound']) &&
    finiteOrNull(flow['hotMs']) &&
    finiteOrNull(flow['hotC']) &&
    finiteOrNull(flow['stillInletC']) &&
    finiteOrNull(flow['stillMs']) &&
    amount(flow['kind']) &&
    finiteOrNull(flow['runsOnMs']) &&
    finiteOrNull(flow['flowLMin']) &&
    finiteOrNull(flow['powerW']) &&
    amount(flow['smoothedMs']) &&
    flag(flow['primed']) &&
    finiteOrNull(flow['lowMs']) &&
    finiteOrNull(flow['sinksMs']) &&
    finiteOrNull(flow['shortMs'])
  );
};

const isSums: Check = (value) => {
  const sums = record(value);
  return (
    sums !== null &&
    finite(sums['excessKMs']) &&
    finite(sums['heatWM2Ms']) &&
    amount(sums['forMs']) &&
    amount(sums['poorInARow'])
  );
};

export const isUpkeep: Check = (value) => {
  const upkeep = record(value);
  return (
    upkeep !== null &&
    finiteOrNull(upkeep['lowFlowLMin']) &&
    isSums(upkeep['restContact']) &&
    isSums(upkeep['flowContact']) &&
    finiteOrNull(upkeep['sheetExcessK']) &&
    finiteOrNull(upkeep['poorContactK']) &&
    finiteOrNull(upkeep['restMm']) &&
    finiteOrNull(upkeep['restFromMm']) &&
    finite(upkeep['restFromMs']) &&
    finite(upkeep['lostMm']) &&
    amount(upkeep['lostMs']) &&
    finiteOrNull(upkeep['reservoirMm']) &&
    finite(upkeep['lackingMm']) &&
    amount(upkeep['lackingTimes']) &&
    finiteOrNull(upkeep['neededMm'])
  );
};
