import { NativeSelect, TextInput } from '@mantine/core';
import { alarmPriorities } from '../../../shared-types/alarms.ts';
import { en } from '../text/en.ts';
import styles from './alarm-history.module.css';
import { type EpisodeFilter, type EpisodeSpan, episodeSpans } from './episodes.ts';

const text = en.alarms.history;

const priorities = [
  { value: 'any', label: text.anyPriority },
  ...alarmPriorities.map((value) => ({ value, label: en.priorities[value] })),
];
const spans = episodeSpans.map((value) => ({ value, label: text.spans[value] }));

interface Props {
  readonly filter: EpisodeFilter;
  readonly onChange: (filter: EpisodeFilter) => void;
}

/** Which of the past alarms are shown. */
export function EpisodeFilters({ filter, onChange }: Props) {
  return (
    <div className={styles['filters']}>
      <TextInput
        type="search"
        label={text.find}
        placeholder={text.findPlaceholder}
        value={filter.words}
        onChange={(event) => onChange({ ...filter, words: event.currentTarget.value })}
      />
      <NativeSelect
        label={text.priority}
        data={priorities}
        value={filter.priority}
        onChange={(event) =>
          onChange({ ...filter, priority: event.currentTarget.value as EpisodeFilter['priority'] })
        }
      />
      <NativeSelect
        label={text.span}
        data={spans}
        value={filter.span}
        onChange={(event) => onChange({ ...filter, span: event.currentTarget.value as EpisodeSpan })}
      />
    </div>
  );
}
