import { Card } from '../shell/card.tsx';
import { useSentence } from '../shell/use-formats.ts';
import { en } from '../text/en.ts';
import type { FoundGroup } from './find-settings.ts';
import type { FormPart } from './form-part.ts';
import { SetpointField } from './setpoint-field.tsx';
import styles from './setpoints.module.css';

interface Props extends FormPart, FoundGroup {
  readonly readOnly: boolean;
}

/** The setpoints of one purpose, with the caution that belongs to it. */
export function SetpointGroup({ group, names, ...part }: Props) {
  const inUnits = useSentence();
  const caution = en.groupCautions[group];
  return (
    <Card heading={en.settingGroups[group]}>
      {caution === undefined ? null : (
        <p className={styles['caution']}>
          <strong>{en.setpoints.caution}</strong> {inUnits(caution)}
        </p>
      )}
      <ul className={styles['fields']}>
        {names.map((name) => (
          <li key={name}>
            <SetpointField name={name} {...part} />
          </li>
        ))}
      </ul>
    </Card>
  );
}
