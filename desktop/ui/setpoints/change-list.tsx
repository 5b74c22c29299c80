import { settingTitle } from '../../../shared-types/setting-title.ts';
import { en } from '../text/en.ts';
import { draftSettings, editedNames } from './draft.ts';
import type { FormPart } from './form-part.ts';
import styles from './setpoints.module.css';
import { settingText } from './setting-value.ts';

/** Each changed setpoint: as it is, and as it would be. */
export function ChangeList({ draft, temperature }: Pick<FormPart, 'draft' | 'temperature'>) {
  const made = draftSettings(draft);
  return (
    <ul className={styles['changes']}>
      {editedNames(draft).map((name) => (
        <li key={name}>
          {en.setpoints.changes.line(
            settingTitle(name),
            settingText(name, draft.base[name], temperature),
            draft.edits[name]?.value === null
              ? (draft.edits[name]?.text ?? '')
              : settingText(name, made[name], temperature),
          )}
        </li>
      ))}
    </ul>
  );
}
