import { record } from './checks.ts';
import { stateVersion } from './state.ts';

/** Versions before this one. Their harvest did not know all of gaps and the air yet; all else is alike. */
const versionsBefore: readonly unknown[] = [3, 4];

/**
 * What a version before this one saved, with what it did not remember as unknown: totals, what was learnt, alarms
 * and a lock outlive a new version of the controller. Anything else comes back as it is, to be checked.
 */
export function broughtUp(saved: unknown): unknown {
  const state = record(saved);
  if (state === null || !versionsBefore.includes(state['version'])) return saved;
  const unknown = { inGap: false, airMeanC: null, airFellFromC: null, airCameBack: false };
  const harvest = { ...unknown, ...record(state['harvest']) };
  return { ...state, version: stateVersion, harvest };
}
