import { NativeSelect } from '@mantine/core';
import { useState } from 'react';
import type { SettingName } from '../../../../shared-types/settings.ts';
import { editedNames } from '../../setpoints/draft.ts';
import type { FormPart } from '../../setpoints/form-part.ts';
import { SetpointField } from '../../setpoints/setpoint-field.tsx';
import { en } from '../../text/en.ts';
import { settingOptions } from '../setting-options.ts';
import styles from '../tuning.module.css';
import { trialNames } from './trial-names.ts';

/** Fields of the setpoints to be tried; one more comes by choosing it. */
export function TrialFields(part: FormPart) {
  const [added, setAdded] = useState<readonly SettingName[]>([]);
  const shown = trialNames(editedNames(part.draft), added);
  return (
    <>
      <div className={styles['fields']}>
        {shown.map((name) => (
          <SetpointField key={name} {...part} name={name} readOnly={false} />
        ))}
      </div>
      <NativeSelect
        label={en.tuning.other.add}
        value=""
        data={[{ value: '', label: en.tuning.other.addFirst }, ...settingOptions(shown)]}
        onChange={(event) => setAdded([...added, event.currentTarget.value as SettingName])}
        mb="md"
        maw="24rem"
      />
    </>
  );
}
