import { logPath } from '../../controller/log/log.ts';
import { openLogReader } from '../../controller/log/reader.ts';
import { readSiteFile } from '../../controller/site-file.ts';
import { defaultSettings, type Settings, settingsSchema } from '../../shared-types/settings.ts';
import { recordHistory } from '../../sim/history.ts';
import { usualLoop } from '../../sim/identify/possible-loop.ts';
import { replaySpan } from '../../sim/replay/replay-span.ts';
import { makeReady } from '../../sim/replay/sweep/ready-day.ts';
import { sweep } from '../../sim/replay/sweep/sweep.ts';
import { temporaryFolder } from '../support/temporary.ts';
import { median, report, timeMs } from './figure.ts';

const demoSite = 'sim/scenarios/quillhaven-wash-house.yaml';
const firstDay = '2031-06-21';
const lastDay = '2031-06-28';
const warmUps = 3;
const repeats = 9;
/**
 * A thread takes a second or two to load its modules and to warm up, which no number of threads shortens: a sweep has
 * to last many times as long before its time tells how the work is shared.
 */
const sweptDays = 6;
const sweptValues = 80;

/** What replays, what-ifs and sweeps take, beside reading the log; and the memory of a long replay. */
export async function benchReplay(): Promise<void> {
  const folder = temporaryFolder('bench');
  try {
    const read = readSiteFile(demoSite);
    if (!read.ok) throw new Error(`${demoSite} is not a site file`);
    const { site } = read;
    recordHistory({
      site,
      dataFolder: folder.path,
      fromMs: Date.parse('2031-06-20T22:00:00Z'),
      toMs: Date.parse('2031-06-29T02:00:00Z'),
      seed: 1,
    });
    const path = logPath(folder.path, site.name);
    const settings = settingsSchema.parse({ ...defaultSettings, ...site.settings });
    benchFaithful(path);
    benchMemory(path);
    benchTrials(path, settings);
    await benchSweep(path, settings);
  } finally {
    folder.remove();
  }
}

function benchFaithful(path: string): void {
  const reader = openLogReader(path);
  // One after the other in each round: a machine that others use as well slows both alike. The first rounds warm up.
  const ratios = Array.from({ length: warmUps + repeats }, () => {
    const readingMs = timeMs(1, () => {
      Array.from(reader.records(firstDay));
    });
    const replayMs = timeMs(1, () => {
      if (!replaySpan(reader, { day: firstDay, lastDay: firstDay }).same)
        throw new Error('the replay of a day just recorded differs');
    });
    return replayMs / readingMs;
  });
  reader.close();
  report({
    bench: 'replay',
    figure: 'faithful replay of a day over reading it',
    value: median(ratios.slice(warmUps)),
    unit: '1',
    atMost: 1.5,
  });
}

/** What eight days leave on the heap, above what one day leaves. */
function benchMemory(path: string): void {
  const reader = openLogReader(path);
  const heapMb = (last: string) => {
    const found = replaySpan(reader, { day: firstDay, lastDay: last });
    globalThis.gc?.();
    if (!found.same) throw new Error('the replay of days just recorded differs');
    return process.memoryUsage().heapUsed / 1e6;
  };
  heapMb(firstDay);
  const dayMb = heapMb(firstDay);
  const value = heapMb(lastDay) - dayMb;
  reader.close();
  report({ bench: 'replay', figure: 'heap of 8 days over 1 day', value, unit: 'MB', atMost: 2 });
}

function readyOf(path: string) {
  const made = makeReady(openLogReader(path), firstDay, [usualLoop], 1);
  if (!made.ok) throw new Error(made.why);
  return made.ready;
}

function benchTrials(path: string, settings: Settings): void {
  const ready = readyOf(path);
  const dayMs = timeMs(repeats, () => ready.evaluate(settings));
  report({
    bench: 'replay',
    figure: 'what-if days a second a core, world known',
    value: 1000 / dayMs,
    unit: 'days/s',
    atLeast: 100,
  });
  const worldMs = timeMs(3, () => readyOf(path));
  report({ bench: 'replay', figure: 'world of a day', value: worldMs, unit: 'ms' });
}

async function benchSweep(path: string, settingsInForce: Settings): Promise<void> {
  const took = async (workers: number) => {
    const startMs = performance.now();
    const found = await sweep({
      logPath: path,
      days: Array.from({ length: sweptDays }, (_, index) => `2031-06-${21 + index}`),
      ranges: [{ setting: 'startDifferenceK', from: 1, to: 8, values: sweptValues }],
      settingsInForce,
      loops: [usualLoop],
      loopRemarks: [],
      logMark: '',
      seed: 1,
      workers,
    });
    return { text: JSON.stringify(found), ms: performance.now() - startMs };
  };
  const one = await took(1);
  const two = await took(2);
  if (one.text !== two.text) throw new Error('a sweep depends on the number of its workers');
  report({
    bench: 'replay',
    figure: `sweep of ${sweptDays} days and ${sweptValues} values by 1 worker over 2 workers`,
    value: one.ms / two.ms,
    unit: '1',
    atLeast: 1.8,
  });
}
