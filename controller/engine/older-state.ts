import { record } from './checks.ts';
import { stateVersion } from './state.ts';

/** Newest version before this one. Its harvest did not know gaps and the air yet; all else is alike. */
const versionBefore = 3;

/**
 * What the version before this one saved, with what it did not remember as unknown: totals, what was learnt, alarms
 * and a lock outlive a new version of the controller. Anything else comes back as it is, to be checked.
 */
export function broughtUp(saved: unknown): unknown {
  const state = record(saved);
  if (state?.['version'] !== versionBefore) return saved;
  const harvest = { inGap: false, airMeanC: null, ...record(state['harvest']) };
  return { ...state, version: stateVersion, harvest };
}
