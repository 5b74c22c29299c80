import { createHash } from 'node:crypto';
import { engineVersion } from '../../../controller/engine/index.ts';
import type { Settings } from '../../../shared-types/settings.ts';
import type { SettingRange, SweepReport } from '../../../shared-types/tuning.ts';
import type { PossibleLoop } from '../../identify/possible-loop.ts';
import { advise } from './advise.ts';
import { keepResults, keptResults } from './keep.ts';
import type { Answer, WorkerTask } from './messages.ts';
import { type Points, pointsOf } from './points.ts';
import { workOff } from './pool.ts';
import { createQueue } from './queue.ts';
import { type DayResult, missingOf, noResults } from './results.ts';
import { sumUp } from './sum-up.ts';
import type { Tried } from './trial.ts';

export interface SweepProgress {
  /** Outcomes known, and wanted: points times days. */
  readonly done: number;
  readonly all: number;
}

export interface SweepOptions {
  readonly logPath: string;
  /** Local days to be tried on, each kept in the log. */
  readonly days: readonly string[];
  /** What the log holds of these days: what was found is of no worth once that is another. */
  readonly logMark: string;
  readonly ranges: readonly SettingRange[];
  readonly settingsInForce: Settings;
  /** The best-known loop, then loops drawn from what is uncertain of it; one or more. */
  readonly loops: readonly PossibleLoop[];
  /** What is to be said of where the loop came from. */
  readonly loopRemarks: readonly string[];
  readonly seed: number;
  /** Threads, 1 or more; they change the time it takes and nothing else. */
  readonly workers: number;
  /** File in which what was found is kept, to go on after an interruption. */
  readonly resumeFile?: string | undefined;
  readonly onProgress?: ((progress: SweepProgress) => void) | undefined;
  readonly signal?: AbortSignal | undefined;
  /** Module that each thread runs, for hosts that bundle it elsewhere. */
  readonly workerModule?: URL | string;
}

/** Found outcomes are kept at most this often [ms], and at the end. */
const keepEveryMs = 2000;

/**
 * Tries many sets of settings on many logged days.
 *
 * @returns undefined when it was given up; what was found by then is in the resume file.
 * @throws RangeError for ranges or days that cannot be tried, with words for people.
 */
export async function sweep(options: SweepOptions): Promise<SweepReport | undefined> {
  const points = pointsOf(options.ranges, options.settingsInForce, options.seed);
  const results = await tryAll(options, points);
  return results === undefined ? undefined : reportOf(options, points, results);
}

async function tryAll(options: SweepOptions, { points }: Points): Promise<DayResult[] | undefined> {
  const { logPath, days, loops, seed, logMark, resumeFile, signal } = options;
  const task: WorkerTask = { logPath, days, settings: points.map((point) => point.settings), loops, seed };
  const plan = planOf(task, logMark);
  const kept = resumeFile === undefined ? undefined : keptResults(resumeFile, plan);
  const results = kept ?? noResults(days.length, points.length);
  const keeper = createKeeper(resumeFile, plan, results);
  const progress = createProgress(results);
  const hear = (answer: Answer) => {
    note(results, answer);
    if (answer.kind !== 'done') options.onProgress?.(progress(answer.day));
    keeper.now(false);
  };
  try {
    await workOff({
      queue: createQueue(results.map(missingOf)),
      workers: options.workers,
      task,
      module: options.workerModule ?? new URL('./worker.ts', import.meta.url),
      hear,
      signal,
    });
  } finally {
    keeper.now(true);
  }
  return signal?.aborted === true ? undefined : results;
}

function note(results: readonly DayResult[], answer: Answer): void {
  if (answer.kind === 'done') return;
  const result = results[answer.day] as DayResult;
  if (answer.kind === 'tried') result.tried[answer.point] = answer.tried;
  else {
    result.why = answer.why;
    result.remarks = answer.remarks;
  }
}

/** Counts anew only the day of which something was heard: of long sweeps there are many. */
function createProgress(results: readonly DayResult[]): (day: number) => SweepProgress {
  const missing = results.map((result) => missingOf(result).length);
  const all = results.reduce((sum, { tried }) => sum + tried.length, 0);
  let left = missing.reduce((sum, count) => sum + count, 0);
  return (day) => {
    const before = missing[day] as number;
    const now = missingOf(results[day] as DayResult).length;
    missing[day] = now;
    left += now - before;
    return { done: all - left, all };
  };
}

function createKeeper(path: string | undefined, plan: string, results: readonly DayResult[]) {
  let lastMs = performance.now();
  return {
    now(atOnce: boolean): void {
      if (path === undefined) return;
      if (!atOnce && performance.now() - lastMs < keepEveryMs) return;
      keepResults(path, plan, results);
      lastMs = performance.now();
    },
  };
}

/** What a sweep is of. Workers do not belong to it. */
function planOf({ logPath: _, ...task }: WorkerTask, logMark: string): string {
  return createHash('sha256').update(JSON.stringify({ engineVersion, logMark, task })).digest('hex');
}

function reportOf(
  options: SweepOptions,
  { points, refused, remarks }: Points,
  results: DayResult[],
): SweepReport {
  const lived = results.flatMap(({ why, tried }) => (why === null ? [tried as Tried[]] : []));
  if (lived.length === 0)
    throw new RangeError(results.map(({ why }) => why).join('; ') || 'no day was given');
  const summed = sumUp(points, lived);
  return {
    days: options.days.filter((_, day) => results[day]?.why === null),
    settingsInForce: options.settingsInForce,
    points: summed,
    refused,
    advice: advise(summed),
    remarks: [...remarks, ...options.loopRemarks, ...dayRemarks(options.days, results)],
  };
}

/** What days say, each saying once with the days that say it. */
function dayRemarks(days: readonly string[], results: readonly DayResult[]): string[] {
  const saying = new Map<string, string[]>();
  results.forEach(({ why, remarks }, index) => {
    for (const text of why === null ? remarks : [`Left out: ${why}.`])
      saying.set(text, [...(saying.get(text) ?? []), days[index] as string]);
  });
  return [...saying].map(([text, on]) =>
    text.startsWith('Left out') ? text : `${on.length === 1 ? on[0] : `${on.length} days`}: ${text}`,
  );
}
