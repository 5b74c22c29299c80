import { heldFor, hold } from '../blocks/hold.ts';
import { hysteresis } from '../blocks/hysteresis.ts';
import type { Command, Situation } from '../situation.ts';
import type { DumpMemory, EngineState, Phase } from '../state.ts';
import { leastFlowLMin } from '../watch/pump-signs.ts';

type Heat = EngineState['heat'];

/** Heat is dumped until the pan is this much below where the liner counts as hot [K]; a design choice. */
const endsK = 8;
/** In this time a heat dump has to bring the pan below where the liner counts as hot [ms]; a design choice. */
const helpsWithinMs = 900_000;
/** A store that warms by so much while heat is dumped shows that none of it goes [K]; a design choice. */
const storeRiseK = 2;

/** Temperatures at which liner and store count as too hot [°C], and whether the store takes no more. */
interface Limits {
  readonly linerC: number;
  readonly storeC: number;
  readonly storeFull: boolean;
}

const idle: DumpMemory = { wanted: false, failed: false, sinceMs: null, fromC: null };

/**
 * Brings the memory of the heat dump up to this step: wanted from a hot liner on while the store is full and the
 * pan warmer than it. Where it does not help it is given up until the store takes heat again or the pan has cooled.
 *
 * @returns undefined where the loop has none.
 */
export function updateDump(
  { dump: before = idle }: Heat,
  limits: Limits,
  situation: Situation,
): DumpMemory | undefined {
  const { facts, site } = situation;
  if (site.heatDump === undefined) return undefined;
  const { hottestPanC, differenceK } = facts;
  const { linerC, storeFull } = limits;
  // Without the pan's temperature the loop is kept safe by others; what was found stays.
  if (hottestPanC === null) return before;
  if (!storeFull || hottestPanC < linerC - endsK) return isIdle(before) ? before : idle;
  const hot = hysteresis(before.wanted, hottestPanC, linerC, linerC - endsK);
  const judged = judge(before, limits, hottestPanC, situation);
  const wanted = hot && !judged.failed && (differenceK ?? 0) > 0;
  return wanted === before.wanted && judged === before ? before : { ...judged, wanted };
}

function isIdle({ wanted, failed, fromC }: DumpMemory): boolean {
  return !wanted && !failed && fromC === null;
}

/** Whether what was dumped so far has helped. */
function judge(
  before: DumpMemory,
  limits: Limits,
  panC: number,
  { state, facts, runMs }: Situation,
): DumpMemory {
  const { hottestStoreC } = facts;
  const sinceMs = hold(before.sinceMs, state.outputs.heatDumpOn === true, runMs);
  const fromC = before.fromC ?? (sinceMs === null ? null : hottestStoreC);
  const risesFromC = Math.max(fromC ?? limits.storeC, limits.storeC);
  const rises = sinceMs !== null && (hottestStoreC ?? 0) - risesFromC >= storeRiseK;
  const stays = panC >= limits.linerC && heldFor(sinceMs, runMs, helpsWithinMs);
  const failed = before.failed || rises || stays;
  const same = failed === before.failed && sinceMs === before.sinceMs && fromC === before.fromC;
  return same ? before : { wanted: before.wanted, failed, sinceMs, fromC };
}

/** True while heat is to be dumped from the full pan. */
export function dumpsHeat({ state: { heat, water } }: Situation): boolean {
  return heat.dump?.wanted === true && water.level === 'full';
}

/**
 * Whether the output is on: while water goes round to dump heat. The pump has to run before it, and a flow that is
 * measured has to be there.
 */
export function heatDumpRuns(situation: Situation, phase: Phase, { cause }: Command): boolean {
  const { outputs } = situation.state;
  const { flowLMin } = situation.facts;
  if (cause.code !== 'dumping-heat' || phase.name !== 'circulating' || outputs.pumpFraction === 0)
    return false;
  return flowLMin === null || flowLMin >= leastFlowLMin(situation);
}
