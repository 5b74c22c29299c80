import type { DayCurves, DaySummary, LogEvent, LogFacts, LogRecord } from '../../shared-types/log.ts';
import type { Settings } from '../../shared-types/settings.ts';
import type { Site } from '../../shared-types/site.ts';

/**
 * Where a restart, or a replay, can take up: the engine's state after a step, as JSON.
 *
 * Of each run and local day the first and the newest saved state are kept, the others give way.
 */
export interface SavedState {
  readonly atMs: number;
  readonly run: number;
  /** Step after which the state stood; 0 for the start of the run, whose first step has the number 1. */
  readonly step: number;
  readonly engineVersion: string;
  readonly state: unknown;
}

/** What a writer finds when it opens a log: the last saved state and the records after it. */
export interface Resume {
  readonly saved: SavedState | null;
  readonly after: readonly LogRecord[];
  readonly settings: Settings | null;
}

/**
 * The one writer of a site's log. When the file cannot be written (damaged, locked, disk full) it
 * says so in `remark`, turns `writable` false and swallows what it is given: control goes on. What may
 * pass (a full disk) is tried again now and then; a damaged file is left as it is. The run, the site and the
 * settings that were given meanwhile are kept under their numbers before anything else is written again.
 */
export interface LogWriter {
  readonly writable: boolean;
  readonly remark: string | null;
  /** What the log holds to go on from; of one that cannot be written, what can be read of it. */
  resume(): Resume;
  /** Everything that `work` writes in one transaction: many rows at the cost of few. */
  batch(work: () => void): void;
  site(revision: number): Site | null;
  settings(revision: number): Settings | null;
  /** @returns the number of the new run, 1 or more. */
  startRun(engineVersion: string, atMs: number): number;
  /** Keeps the site or the settings if they are new. @returns their revision, 1 or more. */
  keepSite(site: Site, atMs: number): number;
  keepSettings(settings: Settings, atMs: number): number;
  append(record: LogRecord): void;
  event(event: LogEvent): void;
  saveState(saved: SavedState): void;
  close(): void;
}

/** Any number of readers, while the writer writes. A damaged file gives what is readable. */
export interface LogReader {
  readonly remarks: readonly string[];
  days(): DaySummary[];
  /** @throws RangeError when nothing of that day is kept. */
  day(day: string): DayCurves;
  /** Curves of the span [fromMs, toMs). */
  span(fromMs: number, toMs: number): DayCurves;
  /** Records of a local day in order, one after another, without holding them all. */
  records(day: string): IterableIterator<LogRecord>;
  /** Records of the span [fromMs, toMs) in the order in which they were written, one after another. */
  recordsWithin(fromMs: number, toMs: number): IterableIterator<LogRecord>;
  /** Newest state saved at or before the step, or null. */
  stateBefore(run: number, step: number): SavedState | null;
  /** Records of `run` with a step above `afterStep` and below `beforeStep`, in order. */
  between(run: number, afterStep: number, beforeStep: number): IterableIterator<LogRecord>;
  site(revision: number): Site | null;
  settings(revision: number): Settings | null;
  engineVersion(run: number): string | null;
  newestMs(): number | null;
  /** Day of the newest step and the site that it belongs to; null before the first, or of a site not understood. */
  newestDay(): { readonly day: string; readonly site: Site } | null;
  /** The newest events, the newest first; of the kinds that are given, or of every kind. */
  events(limit: number, kinds?: readonly LogEvent['kind'][]): LogEvent[];
  facts(): LogFacts;
  close(): void;
}

/** Path of a site's log below the data folder. */
export function logPath(dataFolder: string, site: string): string {
  return `${dataFolder}/${site}/log.sqlite`;
}
