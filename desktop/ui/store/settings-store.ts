import { create } from 'zustand';
import type { LogEvent } from '../../../shared-types/log.ts';
import type { Settings } from '../../../shared-types/settings.ts';
import type { SettingsRemark, WhatIfReport } from '../../../shared-types/what-if.ts';
import type { JobOutcome } from './job-slot.ts';
import type { Loaded } from './loaded.ts';
import type { Asked } from './request-store.ts';

/** A change of settings that was sent. */
export interface SentChange {
  readonly site: string;
  readonly patch: Partial<Settings>;
  /** Revision in force when it was sent. */
  readonly revision: number;
  readonly outcome: Exclude<Asked, { state: 'none' }>;
}

/** A logged day decided under other settings; `settings` are those that it was asked for. */
export interface WhatIfRun {
  readonly site: string;
  readonly day: string;
  readonly settings: Settings;
  readonly outcome: JobOutcome<WhatIfReport>;
}

export interface SettingsState {
  readonly sent: SentChange | null;
  readonly whatIf: WhatIfRun | null;
  /** Remarks on the settings that were last asked about; null before. */
  readonly remarks: { readonly settings: Settings; readonly list: readonly SettingsRemark[] } | null;
  /** By site: changes in the log, the newest first. */
  readonly changes: Readonly<Record<string, Loaded<readonly LogEvent[]>>>;
}

export const emptySettings: SettingsState = { sent: null, whatIf: null, remarks: null, changes: {} };

/** What the host said about settings. Only the feed writes it. */
export const useSettings = create<SettingsState>(() => emptySettings);

export const selectSent =
  (site: string) =>
  ({ sent }: SettingsState): SentChange | null =>
    sent?.site === site ? sent : null;
export const selectWhatIf =
  (site: string) =>
  ({ whatIf }: SettingsState): WhatIfRun | null =>
    whatIf?.site === site ? whatIf : null;
export const selectRemarks = ({ remarks }: SettingsState): SettingsState['remarks'] => remarks;
export const selectChanges =
  (site: string) =>
  ({ changes }: SettingsState): Loaded<readonly LogEvent[]> | undefined =>
    Object.hasOwn(changes, site) ? changes[site] : undefined;
