import type { SettingName } from '../../../../shared-types/settings.ts';
import type { SweepPoint } from '../../../../shared-types/tuning.ts';

/** How many changes in the form a combination does not bring along. */
export const droppedEdits = (edited: readonly SettingName[], change: SweepPoint['change']): number =>
  edited.filter((name) => change[name] === undefined).length;
