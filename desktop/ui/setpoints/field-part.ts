import type { SettingName } from '../../../shared-types/settings.ts';
import type { FormPart } from './form-part.ts';

/** What the input of a setpoint is given. */
export interface FieldPart extends FormPart {
  readonly name: SettingName;
  readonly title: string;
  /** Elements that say more about it, by their ids. */
  readonly describedBy: string;
  /** Why its value cannot be applied; empty when it can. */
  readonly reasons: readonly string[];
  readonly readOnly: boolean;
}
