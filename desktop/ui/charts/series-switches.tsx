import { useComputedColorScheme } from '@mantine/core';
import { choose, selectHiddenSeries, selectShownSeries, useChoices } from '../store/choices-store.ts';
import { en } from '../text/en.ts';
import { type SeriesName, seriesLooks, seriesTitle } from './series.ts';
import { SeriesSample } from './series-sample.tsx';
import styles from './series-switches.module.css';

interface Props {
  readonly present: readonly SeriesName[];
  readonly drawn: readonly SeriesName[];
}

/** Legend and switches in one: which curve looks how, and whether it is drawn. */
export function SeriesSwitches({ present, drawn }: Props) {
  const hidden = useChoices(selectHiddenSeries);
  const shown = useChoices(selectShownSeries);
  const scheme = useComputedColorScheme('light', { getInitialValueInEffect: false });
  const toggle = (name: SeriesName) => {
    if (!seriesLooks[name].shownAtFirst) choose({ shownSeries: toggled(shown, name) });
    else choose({ hiddenSeries: toggled(hidden, name) });
  };
  return (
    <fieldset className={styles['switches']}>
      <legend className="visually-hidden">{en.charts.series}</legend>
      {present.map((name) => (
        <label key={name} className={styles['switch']}>
          <input type="checkbox" checked={drawn.includes(name)} onChange={() => toggle(name)} />
          <SeriesSample name={name} scheme={scheme} />
          {seriesTitle(name)}
        </label>
      ))}
    </fieldset>
  );
}

const toggled = (list: readonly string[], name: string): string[] =>
  list.includes(name) ? list.filter((one) => one !== name) : [...list, name];
