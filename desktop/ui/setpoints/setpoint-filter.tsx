import { SegmentedControl, TextInput } from '@mantine/core';
import { en } from '../text/en.ts';
import { type ShownChoice, shownChoices } from './find-settings.ts';
import styles from './setpoints.module.css';

const text = en.setpoints;

interface Props {
  readonly search: string;
  readonly onSearch: (search: string) => void;
  readonly shown: ShownChoice;
  readonly onShown: (shown: ShownChoice) => void;
  /** Setpoints that are left. */
  readonly count: number;
}

/** Leaves only the setpoints that somebody looks for. */
export function SetpointFilter({ search, onSearch, shown, onShown, count }: Props) {
  return (
    <search className={styles['filter']}>
      <TextInput
        type="search"
        label={text.search}
        value={search}
        className={styles['search']}
        onChange={(event) => onSearch(event.currentTarget.value)}
      />
      <SegmentedControl
        aria-label={text.show}
        value={shown}
        data={shownChoices.map((value) => ({ value, label: text.shown[value] }))}
        onChange={onShown}
      />
      <p role="status" className={styles['soft']}>
        {count === 0 ? text.none : text.found(count)}
      </p>
    </search>
  );
}
