import { SegmentedControl } from '@mantine/core';
import tuning from '../replay/tuning.module.css';
import { en } from '../text/en.ts';
import type { PanForm } from './pan-form.ts';
import { SpanFields } from './span-fields.tsx';

const text = en.panCheck.form;

interface Props {
  readonly form: PanForm;
  readonly onForm: (form: PanForm) => void;
}

/** What the days are compared with: the oldest of them, or days of their own. */
export function ReferenceChoice({ form, onForm }: Props) {
  return (
    <fieldset className={tuning['plain']}>
      <legend className={tuning['legend']}>{text.reference}</legend>
      <div className={tuning['row']}>
        <SegmentedControl
          aria-label={text.chooseBy}
          value={form.by}
          data={[
            { value: 'oldest', label: text.oldest },
            { value: 'fromTo', label: text.fromTo },
          ]}
          onChange={(by) => onForm({ ...form, by })}
        />
        {form.by === 'oldest' ? null : (
          <SpanFields
            name={text.reference}
            span={form.reference}
            onSpan={(reference) => onForm({ ...form, reference })}
          />
        )}
      </div>
    </fieldset>
  );
}
