import type { FileForm, FileHead } from '../../shared-types/foreign-log.ts';
import type { Settings } from '../../shared-types/settings.ts';
import type { Site } from '../../shared-types/site.ts';
import type { TakeInOptions, TakeInOutcome } from '../../sim/import/take-in.ts';
import type { JobFlags } from './job-flags.ts';

/** Site and settings of a loop. */
export interface LoopMessage {
  readonly site: Site;
  readonly settings: Settings;
}

/** What a thread is asked; it lives for one question. */
export type ImportQuestion =
  | { readonly kind: 'head'; readonly path: string; readonly form: FileForm }
  | { readonly kind: 'loops'; readonly dataFolder: string; readonly names: readonly string[] }
  | ({
      readonly kind: 'take-in';
      readonly path: string;
      readonly dataFolder: string;
      readonly siteName: string;
      /** As its controller told it; null: its logs tell. */
      readonly loop: LoopMessage | null;
      readonly flags: JobFlags;
    } & Required<Pick<TakeInOptions, 'map' | 'clash' | 'write'>>);

/** What it answers. */
export interface ImportAnswers {
  head: { readonly ok: true; readonly head: FileHead } | Extract<TakeInOutcome, { ok: false }>;
  loops: readonly LoopMessage[];
  'take-in': {
    readonly outcome: TakeInOutcome;
    /** The site of imported days as it stands after it; null: there is none. */
    readonly imported: LoopMessage | null;
  };
}

/** Asks a thread, and brings its answer. Rejects with words when the thread ended without one. */
export type AskImporter = <Kind extends ImportQuestion['kind']>(
  question: Extract<ImportQuestion, { kind: Kind }>,
) => Promise<ImportAnswers[Kind]>;
