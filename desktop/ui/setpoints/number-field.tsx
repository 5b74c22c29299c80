import { TextInput } from '@mantine/core';
import { useState } from 'react';
import { withEdit } from './draft.ts';
import { putDraft } from './draft-store.ts';
import type { FieldPart } from './field-part.ts';
import styles from './setpoints.module.css';
import { settingUnit } from './setting-unit.ts';
import { fieldText, parseField } from './setting-value.ts';

/** A setpoint that is a number, with its unit inside the field. */
export function NumberField({
  site,
  name,
  title,
  draft,
  temperature,
  describedBy,
  reasons,
  readOnly,
}: FieldPart) {
  // What stands in the field while somebody types: 1.0 must not turn into 1 before the 5 of 1.05 comes.
  const [typed, setTyped] = useState<string | null>(null);
  const edit = draft.edits[name];
  const value = edit === undefined ? draft.base[name] : edit.value;
  const text = typed ?? (value === null ? (edit?.text ?? '') : fieldText(name, value, temperature));
  const take = (next: string) => {
    setTyped(next);
    putDraft(site, withEdit(draft, name, { text: next, value: parseField(name, next, temperature) }));
  };
  return (
    <TextInput
      label={title}
      inputMode="decimal"
      autoComplete="off"
      value={text}
      readOnly={readOnly}
      aria-describedby={describedBy}
      error={reasons.length === 0 ? undefined : reasons.join(' ')}
      classNames={{ input: styles['input'] ?? '' }}
      rightSection={
        <span aria-hidden="true" className={styles['unit']}>
          {settingUnit(name, temperature).symbol}
        </span>
      }
      rightSectionWidth={64}
      onChange={(event) => take(event.currentTarget.value)}
      onBlur={() => setTyped(null)}
    />
  );
}
