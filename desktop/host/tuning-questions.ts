import { existsSync, rmSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { dirname, join } from 'node:path';
import { type LogReader, logPath } from '../../controller/log/log.ts';
import { openLogReader } from '../../controller/log/reader.ts';
import type { HeavyMethod } from '../../shared-types/jobs.ts';
import type { MonitorReply, MonitorResult } from '../../shared-types/monitor-api.ts';
import type { PanCheck } from '../../shared-types/pan-check.ts';
import type { LoopFit } from '../../shared-types/tuning.ts';
import { fitDays } from '../../sim/identify/fit-days.ts';
import { keepFit, readFit } from '../../sim/identify/loop-file.ts';
import { checkPan } from '../../sim/pan-check/check-pan.ts';
import { compareDay, usualSamples } from '../../sim/replay/live-again/compare-day.ts';
import { newestRule } from '../../sim/replay/newest-rule.ts';
import { logMarkOf } from '../../sim/replay/sweep/log-mark.ts';
import { loopsOf } from '../../sim/replay/sweep/loops.ts';
import { type SweepOptions, sweep } from '../../sim/replay/sweep/sweep.ts';
import { checkedReply, noLog, thrownReply } from './checked-reply.ts';
import type { CheckedParams } from './history-messages.ts';
import { isCancelled, type JobFlags, setDone, setStage } from './job-flags.ts';
import type { TuningQuestion } from './tuning-messages.ts';
import { wasGivenUp } from './was-given-up.ts';

interface Given<M extends HeavyMethod> {
  readonly reader: LogReader;
  readonly path: string;
  readonly question: TuningQuestion<M>;
}

type Answers = {
  readonly [M in HeavyMethod]: (given: Given<M>) => Promise<MonitorResult<M> | undefined>;
};

/** Picks noise and drawn loops: the same question has the same answer. */
const seed = 1;
/** Loops that a sweep draws for its bands: fewer than a single day does, since each costs as much as the first. */
const sweepSamples = 4;
/** Most threads of a sweep: beyond this the monitor is no good neighbour. A design choice. */
const mostThreads = 8;
/** How often a sweep looks whether it is still wanted [ms]. */
const lookEveryMs = 200;

const answers: Answers = {
  compareDay: async ({ reader, path, question: { params, flags } }) => {
    const { site, day, settings, best } = params;
    const read = readFit(path, site);
    const goOn = (doneFraction: number) => {
      if (best && doneFraction >= 1) setStage(flags, 'best');
      setDone(flags, doneFraction);
      return !isCancelled(flags);
    };
    setStage(flags, 'living');
    return compareDay(reader, day, settings, {
      ...(read.ok ? { fit: read.fit } : { fit: null, whyNoFit: read.why }),
      samples: usualSamples,
      seed,
      best,
      goOn,
    });
  },
  sweep: (given) => answerSweep(given),
  fit: async (given) => answerFit(given),
  panCheck: async (given) => answerPanCheck(given),
};

async function answerSweep({ reader, path, question }: Given<'sweep'>) {
  const { site, days, ranges }: CheckedParams<'sweep'> = question.params;
  const { flags, sweepWorker } = question;
  const rule = newestRule(reader);
  if (rule === undefined) throw new RangeError('the log holds no step with its site and settings');
  const { loops, remarks } = loopsOf(readFit(path, site), sweepSamples, seed);
  const watch = watchCancel(flags);
  setStage(flags, 'sweeping');
  try {
    return await sweepAnew({
      logPath: path,
      days,
      logMark: logMarkOf(reader, days),
      ranges,
      settingsInForce: rule.settings,
      loops,
      loopRemarks: remarks,
      seed,
      // One processor is left to whatever else runs here, the controller perhaps.
      workers: Math.min(mostThreads, Math.max(1, availableParallelism() - 1)),
      resumeFile: join(dirname(path), `${site}.sweep.json`),
      onProgress: ({ done, all }) => setDone(flags, done / all),
      signal: watch.signal,
      ...(sweepWorker === undefined ? {} : { workerModule: new URL(sweepWorker) }),
    });
  } finally {
    watch.end();
  }
}

/** A fit that converged is kept; one that was given up leaves the one before. */
function answerFit({ reader, path, question: { params, flags } }: Given<'fit'>): LoopFit | undefined {
  setStage(flags, 'fitting');
  const fitted = fitDays(reader, params.days, () => !isCancelled(flags));
  if (isCancelled(flags)) return undefined;
  if (!fitted.ok) throw new RangeError(fitted.why.join('; '));
  if (fitted.fit.converged) keepFit(path, fitted.fit);
  return fitted.fit;
}

function answerPanCheck({
  reader,
  path,
  question: { params, flags },
}: Given<'panCheck'>): PanCheck | undefined {
  const { site, days, referenceDays } = params;
  const read = readFit(path, site);
  const goOn = (doneFraction: number) => {
    setDone(flags, doneFraction);
    return !isCancelled(flags);
  };
  setStage(flags, 'checking');
  const checked = checkPan(reader, { days, referenceDays, fit: read.ok ? read.fit : null, goOn });
  if (checked === undefined) return undefined;
  if (!checked.ok) throw new RangeError(checked.why.join('; '));
  return checked.check;
}

/**
 * Goes on with the sweep that was given up last, or drops what was kept of it when this one is another. Of one that came
 * to its end nothing is kept.
 */
async function sweepAnew(options: SweepOptions & { readonly resumeFile: string }) {
  const { resumeFile } = options;
  const report = await sweepFrom(options, resumeFile);
  if (report !== undefined) rmSync(resumeFile, { force: true });
  return report;
}

async function sweepFrom(options: SweepOptions, resumeFile: string) {
  try {
    return await sweep(options);
  } catch (thrown) {
    if (!(thrown instanceof RangeError && thrown.message.startsWith(resumeFile))) throw thrown;
    // The file is the monitor's own: nobody else goes on from it.
    rmSync(resumeFile);
    return sweep(options);
  }
}

/** Turns the flag of a job into a signal for what waits. */
function watchCancel(flags: JobFlags): { readonly signal: AbortSignal; end(): void } {
  const controller = new AbortController();
  const looking = setInterval(() => {
    if (isCancelled(flags)) controller.abort();
  }, lookEveryMs);
  return { signal: controller.signal, end: () => clearInterval(looking) };
}

/** Answers one long question from the log of its site. Never throws. */
export async function answerTuning<M extends HeavyMethod>(
  question: TuningQuestion<M>,
): Promise<MonitorReply<M>> {
  const { dataFolder, method, params, flags } = question;
  const { site } = params;
  const path = logPath(dataFolder, site);
  if (!existsSync(path)) return noLog(site);
  setStage(flags, 'reading');
  try {
    const reader = openLogReader(path);
    try {
      const result = await answers[method]({ reader, path, question });
      return result === undefined ? wasGivenUp : checkedReply(method, site, { ok: true, result });
    } finally {
      reader.close();
    }
  } catch (thrown) {
    return thrownReply(site, thrown);
  }
}
