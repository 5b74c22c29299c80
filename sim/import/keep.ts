import type { ImportLog } from '../../controller/log/import-log.ts';
import { channels } from '../../shared-types/channels.ts';
import type { Clash, UnderstoodRow } from '../../shared-types/foreign-log.ts';
import type { LogRecord } from '../../shared-types/log.ts';
import type { Settings } from '../../shared-types/settings.ts';
import type { Site } from '../../shared-types/site.ts';
import { mergedSample, sameSample } from './arrange.ts';
import { importedSite } from './imported-site.ts';
import { dayUseOf } from './meter.ts';
import { type DaySteps, samplesOf, stepsOf } from './steps.ts';

/** A local day of the file, its samples in order. */
export interface FileDay {
  readonly day: string;
  readonly fromMs: number;
  readonly toMs: number;
  readonly samples: readonly UnderstoodRow[];
}

/** Where days go, and by which rules. */
export interface Keeping {
  /** Null: nothing is kept, it is only told what would be. */
  readonly log: Pick<ImportLog, 'keep' | 'putDay'> | null;
  /** What is kept of a day so far. */
  readonly storedOf: (day: string) => readonly LogRecord[];
  readonly site: Site;
  readonly settings: Settings;
  readonly clash: Clash;
}

/** What became of a day. */
export interface DayOutcome {
  readonly added: number;
  readonly changed: number;
  /** Instants of the samples that became steps [UTC ms]. */
  readonly taken: ReadonlySet<number>;
  readonly hasHeat: boolean;
}

/** Puts a day of the file to what the log holds of that day. What adds nothing writes nothing. */
export function keepDay(fileDay: FileDay, { log, storedOf, site, settings, clash }: Keeping): DayOutcome {
  const { day, fromMs, samples } = fileDay;
  const stored = samplesOf(storedOf(day));
  const steps = stepsOf(day, union(stored, samples, clash), site);
  const use = dayUseOf(steps, site);
  const { added, changed } = news(stored, steps.samples);
  if (log !== null && added + changed > 0) {
    const revisions = {
      siteRevision: log.keep('sites', importedSite(site, channelsOf(steps)), fromMs),
      settingsRevision: log.keep('settings', settings, fromMs),
    };
    const { totals, ...sums } = use;
    log.putDay({
      ...fileDay,
      ...sums,
      steps: steps.steps.map(({ input, outputs }, index) => {
        const total = totals[index] as (typeof totals)[number];
        const outcome = { ...unknownOutcome, outputs, total };
        return { ...revisions, input, outcome, heatTodayJ: use.heatHomeJ === null ? null : total.heatHomeJ };
      }),
    });
  }
  const taken = new Set(steps.samples.map(({ atMs }) => atMs));
  return { added, changed, taken, hasHeat: use.heatHomeJ !== null };
}

/** What another logger did not tell. */
const unknownOutcome = {
  phase: 'unknown',
  reasons: { phase: 'unknown', pump: 'unknown', drain: 'unknown' },
  alarms: [],
  failed: [],
} satisfies Partial<Parameters<ImportLog['putDay']>[0]['steps'][number]['outcome']>;

function union(
  stored: readonly UnderstoodRow[],
  fresh: readonly UnderstoodRow[],
  clash: Clash,
): UnderstoodRow[] {
  const byInstant = new Map(stored.map((sample) => [sample.atMs, sample]));
  for (const sample of fresh) {
    const known = byInstant.get(sample.atMs);
    const [first, second] = clash === 'keep' ? [known, sample] : [sample, known];
    byInstant.set(
      sample.atMs,
      known === undefined ? sample : mergedSample(first as UnderstoodRow, second as UnderstoodRow),
    );
  }
  return [...byInstant.values()].sort((a, b) => a.atMs - b.atMs);
}

function news(stored: readonly UnderstoodRow[], now: readonly UnderstoodRow[]) {
  const known = new Map(stored.map((sample) => [sample.atMs, sample]));
  let [added, changed] = [0, 0];
  for (const sample of now) {
    const before = known.get(sample.atMs);
    if (before === undefined) added++;
    else if (!sameSample(before, sample)) changed++;
  }
  return { added, changed };
}

function channelsOf({ steps }: DaySteps) {
  return channels.filter((channel) => steps.some(({ input }) => input.readings[channel] !== undefined));
}
