import type { AlarmCode } from '../../../shared-types/alarms.ts';
import type { Decision, OperatorRequest, PhaseName } from '../../../shared-types/engine.ts';
import { createFaultBoard } from '../../../sim/device/fault-board.ts';
import { parseFaultWish } from '../../../sim/device/fault-text.ts';
import { instantOf, parseMoment } from '../../../sim/device/local-moment.ts';
import { createExtremes, lookAt } from '../../../sim/simulate/extremes.ts';
import { responses } from './responses.ts';
import type { FailureRow } from './row.ts';
import { begin, type Healthy, healthyOf, sceneOf, stepS } from './scene.ts';

/** What came of a failure. Times since it came, or since it went [s]; null: never. */
export interface Course {
  detectedS: number | null;
  respondedS: number | null;
  recoveredS: number | null;
  /** Moments after the response at which it did not hold. */
  lapses: number;
  /** True when the loop ran again though nobody had asked it to. */
  recoveredUnasked: boolean;
  /** Alarms that were announced and that the healthy loop does not have, in their order. */
  announced: AlarmCode[];
  mostIceKg: number;
  /** Coldest water in a pan that held any to speak of [°C]; null where it held none. */
  lowestPanC: number | null;
  /** Heat brought home since the failure came, over that of the healthy loop; NaN where that brings none. */
  harvestFraction: number;
}

/** A locked loop is left alone for this long after the failure is gone, to see that it stays locked [h]. */
const leftAloneH = 1;

/** Lets a failure happen in its scene and watches what comes of it. */
export function play(row: FailureRow): Course {
  const scene = sceneOf(row.scene);
  const healthy = healthyOf(row.scene);
  const times = timesOf(row, scene, healthy);
  const board = createFaultBoard(scene.site);
  for (const text of row.faults) board.raise(faultOf(text), times.fromMs, times.untilMs);
  const { loop, plant, account } = begin(scene, board.activeAt);
  const course: Course = {
    detectedS: null,
    respondedS: null,
    recoveredS: null,
    lapses: 0,
    recoveredUnasked: false,
    announced: [],
    mostIceKg: 0,
    lowestPanC: null,
    harvestFraction: Number.NaN,
  };
  const extremes = createExtremes();
  const homeBefore = { failed: 0, healthy: 0 };
  let was: Decision | null = null;
  for (let step = 0; scene.startMs + step * stepS * 1000 <= times.endMs; step++) {
    const atMs = scene.startMs + step * stepS * 1000;
    const { decision } = loop.step(atMs, requestAt(row, atMs, times));
    const twin = healthy.at(step);
    if (atMs <= times.fromMs) Object.assign(homeBefore, { failed: account.homeJ, healthy: twin.homeJ });
    else {
      watch(course, row, { decision, plant, healthy: twin.decision }, (atMs - times.fromMs) / 1000);
      if (atMs <= times.untilMs)
        noteAnnounced(course, was, decision, row.faults.length === 0 ? none : healthyCodes(healthy, step));
      watchRecovery(course, row, decision, twin.decision, (atMs - times.untilMs) / 1000);
      lookAt(extremes, plant);
      course.harvestFraction = (account.homeJ - homeBefore.failed) / (twin.homeJ - homeBefore.healthy);
    }
    was = decision;
  }
  const { mostIceKg, lowestPanC } = extremes;
  return { ...course, mostIceKg, lowestPanC };
}

interface Times {
  readonly fromMs: number;
  readonly untilMs: number;
  readonly endMs: number;
}

/** A phase that is waited for has lasted this long [ms], so that the loop has settled in it. */
const settledMs = 600_000;

function timesOf(row: FailureRow, { startMs, site }: ReturnType<typeof sceneOf>, healthy: Healthy): Times {
  const { at, lastsH, watchH } = row;
  const moment = parseMoment(at);
  if (moment === undefined) throw new Error(`${at} is no time`);
  const stepMs = stepS * 1000;
  let step = Math.ceil((instantOf(moment, startMs, site.timeZone) - startMs) / stepMs);
  while (row.in !== undefined && !isIn(row.in, healthy.at(step).decision)) step++;
  const fromMs = startMs + step * stepMs;
  const untilMs = lastsH === undefined ? Number.POSITIVE_INFINITY : fromMs + lastsH * 3_600_000;
  return { fromMs, untilMs, endMs: fromMs + watchH * 3_600_000 };
}

function isIn(wanted: PhaseName, { phase, phaseForMs }: Decision): boolean {
  return phase === wanted && phaseForMs >= settledMs;
}

function faultOf(text: string) {
  const parsed = parseFaultWish(text);
  if (!parsed.ok) throw new Error(`${text}: ${parsed.why}`);
  return parsed.value.fault;
}

/** Where a person has to ask for automatic, one does so an hour after the failure is gone. */
function requestAt({ recovery }: FailureRow, atMs: number, { untilMs }: Times): OperatorRequest | null {
  if (recovery?.by !== 'person' || atMs !== untilMs + leftAloneH * 3_600_000) return null;
  return { id: 'back-to-automatic', ageMs: 0, lifeMs: 10_000, operation: { kind: 'automatic' } };
}

function watch(
  course: Course,
  row: FailureRow,
  moment: Parameters<(typeof responses)['pan is empty']>[0],
  sinceS: number,
): void {
  const { alarms } = moment.decision;
  if (row.head !== null && alarms.some(({ code, active }) => code === row.head && active))
    course.detectedS ??= sinceS;
  if (responses[row.response](moment)) course.respondedS ??= sinceS;
  else if (course.respondedS !== null) course.lapses++;
}

function noteAnnounced(
  course: Course,
  was: Decision | null,
  { alarms }: Decision,
  usual: ReadonlySet<AlarmCode>,
): void {
  for (const { code, state, sinceMs } of alarms) {
    const before = was?.alarms.find((alarm) => alarm.code === code);
    const isNew = before?.state !== 'unacknowledged' || before.sinceMs !== sinceMs;
    if (state === 'unacknowledged' && isNew && !usual.has(code)) course.announced.push(code);
  }
}

const none: ReadonlySet<AlarmCode> = new Set();

/** What the healthy loop announced up to a step. */
function healthyCodes(healthy: Healthy, step: number): ReadonlySet<AlarmCode> {
  return new Set(healthy.at(step).decision.alarms.map(({ code }) => code));
}

/** Back is a loop that runs, or that does what the healthy one does, with no alarm left standing. */
function watchRecovery(
  course: Course,
  { recovery }: FailureRow,
  now: Decision,
  healthy: Decision,
  sinceS: number,
): void {
  if (sinceS <= 0) return;
  const stands = now.alarms.some(
    ({ active, code }) => active && !healthy.alarms.some((alarm) => alarm.code === code),
  );
  const runs = now.phase === 'filling' || now.phase === 'circulating' || now.phase === healthy.phase;
  if (stands || !runs) return;
  const askedS = recovery?.by === 'person' ? leftAloneH * 3600 : 0;
  if (sinceS < askedS) course.recoveredUnasked = true;
  else course.recoveredS ??= sinceS - askedS;
}
