import { NativeSelect, TextInput } from '@mantine/core';
import { useState } from 'react';
import { decimalMarks, delimiters, type FileForm } from '../../../../shared-types/foreign-log.ts';
import { en } from '../../text/en.ts';
import styles from './foreign.module.css';

const text = en.foreign;

interface Props {
  readonly form: FileForm;
  readonly onChange: (form: FileForm) => void;
}

/** How the file is written, where it was guessed wrongly. */
export function FormFields({ form, onChange }: Props) {
  const [line, setLine] = useState(String(form.headerLine));
  const takeLine = () => {
    const headerLine = Number(line);
    if (Number.isInteger(headerLine) && headerLine >= 1 && headerLine <= 100)
      onChange({ ...form, headerLine });
    else setLine(String(form.headerLine));
  };
  return (
    <div className={styles['fields']}>
      <NativeSelect
        label={text.delimiter}
        value={form.delimiter}
        data={delimiters.map((value) => ({ value, label: text.delimiters[value] }))}
        onChange={(event) => onChange({ ...form, delimiter: event.currentTarget.value as ',' })}
      />
      <NativeSelect
        label={text.decimal}
        value={form.decimal}
        data={decimalMarks.map((value) => ({ value, label: text.decimals[value] }))}
        onChange={(event) => onChange({ ...form, decimal: event.currentTarget.value as '.' })}
      />
      <TextInput
        label={text.headerLine}
        inputMode="numeric"
        value={line}
        onChange={(event) => setLine(event.currentTarget.value)}
        onBlur={takeLine}
        onKeyDown={(event) => {
          if (event.key === 'Enter') takeLine();
        }}
      />
    </div>
  );
}
