import { TextInput } from '@mantine/core';
import { en } from '../text/en.ts';
import type { SpanDraft } from './pan-form.ts';

const text = en.panCheck.form;

interface Props {
  /** What the days are for. */
  readonly name: string;
  readonly span: SpanDraft;
  readonly onSpan: (span: SpanDraft) => void;
}

/** Days from one to another. */
export function SpanFields({ name, span, onSpan }: Props) {
  return (['from', 'to'] as const).map((end) => {
    const label = end === 'from' ? text.firstDay : text.lastDay;
    return (
      <TextInput
        key={end}
        type="date"
        label={label}
        aria-label={text.named(name, label)}
        value={span[end]}
        onChange={(event) => onSpan({ ...span, [end]: event.currentTarget.value })}
      />
    );
  });
}
