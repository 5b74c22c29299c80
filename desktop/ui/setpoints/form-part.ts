import type { Settings } from '../../../shared-types/settings.ts';
import type { TemperatureUnit } from '../format/units.ts';
import type { Draft } from './draft.ts';
import type { Fault } from './draft-faults.ts';

/** What every part of the form is given. */
export interface FormPart {
  readonly site: string;
  readonly inForce: Settings;
  readonly draft: Draft;
  readonly temperature: TemperatureUnit;
  readonly faults: readonly Fault[];
}
