import type { AlarmCode } from '../../shared-types/alarms.ts';
import type { Channel } from '../../shared-types/channels.ts';
import type { Outputs, Totals } from '../../shared-types/engine.ts';
import type { ReadingCause } from '../../shared-types/readings.ts';
import type { ReasonCode } from '../../shared-types/reasons.ts';
import type { CommissionMemory } from './commission/memory.ts';
import type { ComparisonName } from './sense/doubt/names.ts';
import { unknownSunClock } from './sun/clock.ts';
import { noHarvest } from './want/outlook.ts';
import { calmFlow, type FlowMemory, newUpkeep, type UpkeepMemory } from './watch/memory.ts';

/** Version of the shape below. A saved state of another version is not taken up, but for the two before. */
export const stateVersion = 5;

/** A reason before it is put into words. */
export interface Cause {
  readonly code: ReasonCode;
  readonly values: Readonly<Record<string, number>>;
}

/** A reading as it arrived; `atMs` is on the engine's steady time. */
export interface Sample {
  readonly value: number;
  readonly atMs: number;
}

export interface ChannelMemory {
  /** The newest samples that could be read, oldest first; three at most. */
  readonly recent: readonly Sample[];
  /** Arrival of the newest sample, readable or not [steady ms]. */
  readonly arrivedMs: number;
  /** Since when the sensor shows the same, to its last digit [steady ms]. */
  readonly changedMs: number;
  /** Mean size of what a sample stands off the line through its neighbours, twice that, in the channel's unit. */
  readonly scatter: number;
  /** Samples in a row that could not be read. */
  readonly unreadable: number;
  readonly cause: ReadingCause | null;
}

/** Each phase carries only what exists in it. Times are steady. */
export type Phase =
  | { readonly name: 'empty'; readonly sinceMs: number; readonly afterNoGain: boolean }
  | { readonly name: 'filling'; readonly sinceMs: number }
  | { readonly name: 'circulating'; readonly sinceMs: number; readonly afterFill: boolean }
  | { readonly name: 'resting'; readonly sinceMs: number }
  | { readonly name: 'emptying'; readonly sinceMs: number; readonly cause: Cause }
  | { readonly name: 'stopped'; readonly sinceMs: number };

export type WaterLevel = 'empty' | 'part' | 'full' | 'unknown';

/** What is believed of the water in the pan. */
export interface WaterMemory {
  readonly level: WaterLevel;
  /** Time for which pump and drain have let the pan run empty [ms]. */
  readonly drainedMs: number;
  /** The same, and the time for which the device said that the drain was shut [ms]. */
  readonly emptyingMs: number;
  /** The last emptying took too long; stands until the pan is proven empty. */
  readonly overdue: boolean;
  /** Mean store bottom while the pan was filled [°C], and the time that it was known for [ms]. */
  readonly fillStoreC: number | null;
  readonly fillStoreMs: number;
  /** Pan water when its emptying began [°C]; null when it was not known, or the pan was not full. */
  readonly emptyingPanC: number | null;
  /** Pan temperature behind a low-pass, from which its trend follows [°C]. */
  readonly trendC: number | null;
}

/** Instants since which conditions hold [steady ms]; null: does not hold. */
export interface Timers {
  readonly fillMs: number | null;
  readonly startMs: number | null;
  readonly stopMs: number | null;
  readonly noFlowMs: number | null;
  readonly drainOpenMs: number | null;
  readonly losingMs: number | null;
}

/** Last gain of a full pan: its lowest temperature since, and the instant. */
export interface GainMemory {
  readonly lowC: number;
  readonly sinceMs: number;
}

/** By which instant the sun is judged. */
export interface SunClock {
  /** That instant [UTC ms]; null while no calendar was heard. */
  readonly atMs: number | null;
  /** How far the calendar is ahead of it, and since when it says so [steady ms]; null while they agree. */
  readonly apartMs: number | null;
  readonly apartSinceMs: number;
}

export type DoubtCause = Extract<ReadingCause, 'stuck' | 'noisy' | 'disagrees'>;

/** Why a sensor is in doubt for longer than a moment. */
export interface Doubt {
  readonly cause: DoubtCause;
  /** The comparison that accuses it; `itself` where its own readings do. */
  readonly by: ComparisonName | 'itself';
  /** When it was last seen to be so [steady ms]. */
  readonly provenMs: number;
}

/** What is remembered of the sensors while they are watched over hours and days. */
export interface WatchMemory {
  /** When they were looked at last [steady ms]. */
  readonly lookedMs: number;
  /** Since when it is dark [steady ms]; null while it is light, and while nothing tells. */
  readonly darkMs: number | null;
  /** Looks that speak against the sensors of a comparison; below nought, for them. */
  readonly evidence: Readonly<Partial<Record<ComparisonName, number>>>;
  readonly doubts: Readonly<Partial<Record<Channel, Doubt>>>;
  /** What a witness of a sensor that shows the same for long has gone through meanwhile [°C]. */
  readonly still: Readonly<Partial<Record<Channel, { readonly lowC: number; readonly highC: number }>>>;
  /** Dew point that the last night ended with [°C]; null while it was not known. */
  readonly nightDewC: number | null;
}

export const unwatched: WatchMemory = {
  lookedMs: 0,
  darkMs: null,
  evidence: {},
  doubts: {},
  still: {},
  nightDewC: null,
};

/** The coldest air of this local day [°C], null while it was not read, and of the days before, newest last. */
export interface AirLows {
  readonly todayC: number | null;
  readonly daysC: readonly number[];
}

/** How a full, resting pan cools. */
export interface FallMemory {
  /** Begin of the running window [steady ms], and the pan's coldest reading then [°C]. */
  readonly sinceMs: number;
  readonly fromC: number;
  /** How fast it fell in the windows before, newest last [K/s]. */
  readonly fallsKS: readonly number[];
}

/** What the harvest is weighed by. */
export interface HarvestMemory {
  /** Net gain of the full pan [W]; null when it cannot be told. */
  readonly gainW: number | null;
  /** Mean of the dry sheet [°C]; null while the pan is not empty. */
  readonly dryC: number | null;
  /** What the dry sheet took in before the pan was last filled, and a clear sky then [W/m2]; null when not to be told. */
  readonly dryTakenWM2: number | null;
  readonly dryClearWM2: number;
  /** The dry sheet kept to its mean, so that no cloud was about. */
  readonly drySteady: boolean;
  /** How clear the day was so far: 0 for black, 1 for a clear sky. */
  readonly clearFraction: number;
  /** Heat that the full pan lost and has not gained back [J]. */
  readonly lostJ: number;
  /** That loss has become a gap in the sun, and is not gained back yet. */
  readonly inGap: boolean;
  /** Gaps in the sun that this local day the full pan waited through to their end. */
  readonly gaps: number;
  /** Mean of the air over the last three quarters of an hour [°C]; null while no good sensor tells of it. */
  readonly airMeanC: number | null;
  /** What the mean was when the air fell by day so far that the weather may have turned [°C]; null before, and once it came back. */
  readonly airFellFromC: number | null;
  /** Air that fell has come back this local day: its falls tell nothing of the weather. */
  readonly airCameBack: boolean;
  /** When the day ahead was last looked at [steady ms], and what it may bring in an hour and till sunset [J]. */
  readonly lookedMs: number | null;
  /** By how much a clear sky will be brighter in half an hour than it is [W/m2]. */
  readonly risingWM2: number;
  readonly hourJ: number | null;
  readonly dayJ: number | null;
}

type LatchedFrost = 'frost-measured' | 'frost-trend' | 'frost-blind';
export type FailureCause = 'dry-running' | 'no-flow' | 'drain-stands-open' | 'fill-failed' | 'water-lost';

export interface Lease {
  readonly kind: 'run-pump' | 'empty' | 'rest' | 'commission';
  readonly untilMs: number;
  /** A person has seen what a commissioning run waits for. */
  readonly confirmed?: boolean;
}

/** What is remembered of a heat dump while the store is full and the pan hot. */
export interface DumpMemory {
  readonly wanted: boolean;
  /** It did not help; stands until the store takes heat again or the pan has cooled. */
  readonly failed: boolean;
  /** Since when it is on [steady ms], and the hottest of the store when it came on first [°C]. */
  readonly sinceMs: number | null;
  readonly fromC: number | null;
}

/** Speed of the pump while heat is brought home, which way it went last, and when [steady ms]. */
export interface SpeedMemory {
  readonly fraction: number;
  readonly direction: -1 | 0 | 1;
  readonly movedMs: number;
}

export interface AlarmMemory {
  /** Since when the condition differs from `active` [steady ms]; null while they agree. */
  readonly changingMs: number | null;
  readonly active: boolean;
  readonly acknowledged: boolean;
  /** UTC instant of the last raising; a label. */
  readonly raisedMs: number;
  /** When it was raised and when it returned last [steady ms], and how often it came again soon after. */
  readonly activeSinceMs: number;
  readonly returnedMs: number | null;
  readonly repeats: number;
  /** Alarm that explains this one; null while it stands for itself. */
  readonly head: AlarmCode | null;
  /** End of a shelving [steady ms], and the same as a UTC label. */
  readonly shelvedUntilMs: number | null;
  readonly shelvedUntilUtcMs: number | null;
  readonly values: Readonly<Record<string, number>>;
  readonly text: string;
}

/** All that the engine remembers from step to step: plain JSON, one slot a subject. */
export interface EngineState {
  readonly version: typeof stateVersion;
  /** Steady time that all steps together saw [ms]. */
  readonly runMs: number;
  readonly stepped: boolean;
  readonly localDay: string | null;
  readonly sunClock: SunClock;
  readonly sensing: Readonly<Partial<Record<Channel, ChannelMemory>>>;
  readonly watch: WatchMemory;
  readonly phase: Phase;
  readonly water: WaterMemory;
  readonly timers: Timers;
  readonly gain: GainMemory | null;
  readonly harvest: HarvestMemory;
  readonly outputs: Outputs;
  /** The circulation pump: since when it is as it is, and its starts in the last hour. */
  readonly pump: {
    readonly sinceMs: number;
    readonly startsMs: readonly number[];
    /** It was started for no more than to be turned. */
    readonly exercising: boolean;
  };
  readonly speed: SpeedMemory;
  readonly frost: {
    readonly latched: LatchedFrost | null;
    readonly warmMs: number | null;
    /** Since when the pan is kept warm from the store [steady ms]. */
    readonly keepWarmMs: number | null;
    /** Temperature to which the sheet falls this night [°C]; null while no frost is predicted. */
    readonly nightC: number | null;
    readonly storeCold: boolean;
    readonly fall: FallMemory | null;
  };
  readonly airLows: AirLows;
  readonly heat: {
    readonly storeFull: boolean;
    readonly linerHot: boolean;
    /** The store is being cooled through the pan. */
    readonly cooling: boolean;
    /** Only where the site has a heat dump. */
    readonly dump?: DumpMemory;
  };
  readonly flow: FlowMemory;
  readonly upkeep: UpkeepMemory;
  readonly failure: { readonly count: number; readonly cause: FailureCause | null };
  readonly commission: CommissionMemory | null;
  readonly operator: { readonly lease: Lease | null; readonly seen: readonly string[] };
  readonly meter: {
    readonly total: Totals;
    readonly dayStart: Totals;
    /** How much of the heat brought home rests on a flow or an outlet that was not measured [J]. */
    readonly estimatedJ: number;
    /** What the pump has moved since the newest fill began, until it ended [L]. */
    readonly filledL: number;
    /** Outlet less inlet of the empty pan in this night: the sum over time, and its time; null: not compared yet. */
    readonly night: { readonly sumKMs: number; readonly forMs: number } | null;
    /** Heat rate at the last step [W]; null when it was not known. */
    readonly rateW: number | null;
  };
  readonly alarms: Readonly<Partial<Record<AlarmCode, AlarmMemory>>>;
  /** What was learnt about this loop, by name; a number's name ends in its unit. */
  readonly learnt: Readonly<Record<string, number>>;
}

/** Pump off, drain valve without power and so open. */
export const safeOutputs: Outputs = {
  pumpFraction: 0,
  drainOpen: true,
  drainPumpOn: false,
  exchangerPumpOn: false,
};

const noTotals: Totals = {
  heatHomeJ: 0,
  heatLostJ: 0,
  electricityJ: 0,
  pumpRunS: 0,
  starts: 0,
  fills: 0,
};

export const noTimers: Timers = {
  fillMs: null,
  startMs: null,
  stopMs: null,
  noFlowMs: null,
  drainOpenMs: null,
  losingMs: null,
};

export const unknownWater: WaterMemory = {
  level: 'unknown',
  drainedMs: 0,
  emptyingMs: 0,
  overdue: false,
  fillStoreC: null,
  fillStoreMs: 0,
  emptyingPanC: null,
  trendC: null,
};

export const startUp: Cause = { code: 'start-up-proving', values: {} };

/** State of an engine that never stepped: the pan counts as full until it is proven otherwise. */
export function initialState(): EngineState {
  return {
    version: stateVersion,
    runMs: 0,
    stepped: false,
    localDay: null,
    sunClock: unknownSunClock,
    sensing: {},
    watch: unwatched,
    phase: { name: 'emptying', sinceMs: 0, cause: startUp },
    water: unknownWater,
    timers: noTimers,
    gain: null,
    harvest: noHarvest,
    outputs: safeOutputs,
    pump: { sinceMs: 0, startsMs: [], exercising: false },
    speed: { fraction: 1, direction: 0, movedMs: 0 },
    frost: { latched: null, warmMs: null, keepWarmMs: null, nightC: null, storeCold: false, fall: null },
    airLows: { todayC: null, daysC: [] },
    heat: { storeFull: false, linerHot: false, cooling: false },
    flow: calmFlow,
    upkeep: newUpkeep,
    failure: { count: 0, cause: null },
    commission: null,
    operator: { lease: null, seen: [] },
    meter: { total: noTotals, dayStart: noTotals, estimatedJ: 0, filledL: 0, night: null, rateW: null },
    alarms: {},
    learnt: {},
  };
}
