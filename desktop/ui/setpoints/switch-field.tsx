import { SegmentedControl } from '@mantine/core';
import { useId } from 'react';
import { en } from '../text/en.ts';
import { draftSettings, withEdit } from './draft.ts';
import { putDraft } from './draft-store.ts';
import type { FieldPart } from './field-part.ts';
import styles from './setpoints.module.css';

/** A setpoint that is either off or on. */
export function SwitchField({ site, name, title, draft, describedBy, reasons, readOnly }: FieldPart) {
  const id = useId();
  const value = String(draftSettings(draft)[name]);
  return (
    <div>
      <p id={id} className={styles['label']}>
        {title}
      </p>
      <SegmentedControl
        aria-labelledby={id}
        aria-describedby={describedBy}
        value={value}
        readOnly={readOnly}
        data={[
          { value: '0', label: en.setpoints.off },
          { value: '1', label: en.setpoints.on },
        ]}
        onChange={(next) => putDraft(site, withEdit(draft, name, { text: next, value: Number(next) }))}
      />
      {reasons.length === 0 ? null : <p className={styles['reason']}>{reasons.join(' ')}</p>}
    </div>
  );
}
