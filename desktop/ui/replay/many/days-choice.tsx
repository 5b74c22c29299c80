import { SegmentedControl, TextInput } from '@mantine/core';
import { en } from '../../text/en.ts';
import styles from '../tuning.module.css';
import type { SweepForm } from './sweep-form.ts';

const text = en.tuning.many;

interface Props {
  readonly form: SweepForm;
  readonly fault: string | null;
  readonly onForm: (form: SweepForm) => void;
}

/** Over which logged days: the newest so many, or from one to another. */
export function DaysChoice({ form, fault, onForm }: Props) {
  return (
    <fieldset className={styles['plain']}>
      <legend className={styles['legend']}>{text.days}</legend>
      <div className={styles['row']}>
        <SegmentedControl
          aria-label={text.chooseBy}
          value={form.by}
          data={[
            { value: 'newest', label: text.newest },
            { value: 'fromTo', label: text.fromTo },
          ]}
          onChange={(by) => onForm({ ...form, by })}
        />
        {form.by === 'newest' ? (
          <TextInput
            label={text.count}
            inputMode="numeric"
            autoComplete="off"
            w="8rem"
            value={form.count}
            error={fault}
            onChange={(event) => onForm({ ...form, count: event.currentTarget.value })}
          />
        ) : (
          (['from', 'to'] as const).map((end) => (
            <TextInput
              key={end}
              type="date"
              label={end === 'from' ? text.firstDay : text.lastDay}
              value={form[end]}
              onChange={(event) => onForm({ ...form, [end]: event.currentTarget.value })}
            />
          ))
        )}
      </div>
    </fieldset>
  );
}
