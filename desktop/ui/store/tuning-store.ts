import { create } from 'zustand';
import { type HeavyJob, type HeavyMethod, heavyMethods } from '../../../shared-types/jobs.ts';
import type { PanCheck } from '../../../shared-types/pan-check.ts';
import type { Settings } from '../../../shared-types/settings.ts';
import type { Comparison, LoopFit, SettingRange, SweepReport } from '../../../shared-types/tuning.ts';
import type { JobOutcome } from './job-slot.ts';
import type { Loaded } from './loaded.ts';
import { own } from './own.ts';

/** The fit that was kept when a question was asked, as far as this page knew: null without any, undefined when not known. */
type KeptThen = { readonly keptThen: LoopFit | null | undefined };

/** A logged day lived once more; `settings` are those that it was asked for. */
export interface ComparisonRun extends KeptThen {
  readonly site: string;
  readonly day: string;
  readonly settings: Settings;
  readonly outcome: JobOutcome<Comparison>;
}

export interface SweepRun extends KeptThen {
  readonly site: string;
  readonly days: readonly string[];
  readonly ranges: readonly SettingRange[];
  readonly outcome: JobOutcome<SweepReport>;
}

export interface FitRun {
  readonly site: string;
  readonly days: readonly string[];
  readonly outcome: JobOutcome<LoopFit>;
}

export interface PanCheckRun extends KeptThen {
  readonly site: string;
  readonly days: readonly string[];
  /** None: the oldest of the days. */
  readonly referenceDays: readonly string[];
  readonly outcome: JobOutcome<PanCheck>;
}

export interface TuningState {
  readonly comparison: ComparisonRun | null;
  readonly sweep: SweepRun | null;
  readonly fit: FitRun | null;
  readonly panCheck: PanCheckRun | null;
  /** By site: the fit that is kept beside its log. */
  readonly keptFits: Readonly<Record<string, Loaded<LoopFit | null>>>;
  /** By site: a long job that somebody began; null when none runs. */
  readonly heavy: Readonly<Record<string, HeavyJob | null>>;
}

export const emptyTuning: TuningState = {
  comparison: null,
  sweep: null,
  fit: null,
  panCheck: null,
  keptFits: {},
  heavy: {},
};

/** What the host said of days lived again. Only the feed writes it. */
export const useTuning = create<TuningState>(() => emptyTuning);

export const selectComparison =
  (site: string) =>
  ({ comparison }: TuningState): ComparisonRun | null =>
    comparison?.site === site ? comparison : null;
export const selectSweep =
  (site: string) =>
  ({ sweep }: TuningState): SweepRun | null =>
    sweep?.site === site ? sweep : null;
export const selectFit =
  (site: string) =>
  ({ fit }: TuningState): FitRun | null =>
    fit?.site === site ? fit : null;
export const selectPanCheck =
  (site: string) =>
  ({ panCheck }: TuningState): PanCheckRun | null =>
    panCheck?.site === site ? panCheck : null;
export const selectKeptFit =
  (site: string) =>
  ({ keptFits }: TuningState): Loaded<LoopFit | null> | undefined =>
    own(keptFits, site);
export const selectHeavy =
  (site: string) =>
  ({ heavy }: TuningState): HeavyJob | null =>
    own(heavy, site) ?? null;

/** What of those this page has running for a site; undefined when none. */
export const selectOwnRun =
  (site: string) =>
  ({ comparison, sweep, fit, panCheck }: TuningState): HeavyMethod | undefined => {
    const runs = { compareDay: comparison, sweep, fit, panCheck };
    return heavyMethods.find(
      (method) => runs[method]?.site === site && runs[method].outcome.state === 'running',
    );
  };
