import { create } from 'zustand';
import type { FileHead, KeptMaps, TakenIn } from '../../../shared-types/foreign-log.ts';
import type { Problem } from '../../../shared-types/monitor-api.ts';
import type { JobOutcome } from './job-slot.ts';
import type { Loaded } from './loaded.ts';

/** A file on its way to the monitor, or there. */
export interface SentFile {
  readonly name: string;
  /** Null until all of it is there. */
  readonly upload: string | null;
  readonly sentFraction: number;
  readonly problem: Problem | null;
}

/** A look at a file, or its days being taken in. */
export interface ImportRun {
  readonly write: boolean;
  readonly outcome: JobOutcome<TakenIn>;
}

export interface ImportStoreState {
  readonly file: SentFile | null;
  readonly head: Loaded<FileHead> | null;
  readonly run: ImportRun | null;
  readonly maps: Loaded<KeptMaps['maps']> | null;
}

export const noImport: ImportStoreState = { file: null, head: null, run: null, maps: null };

/** A file of another logger on its way in. Only the feed writes it. */
export const useImport = create<ImportStoreState>(() => noImport);
