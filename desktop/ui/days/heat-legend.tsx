import { useChartLook } from '../shell/use-formats.ts';
import { en } from '../text/en.ts';
import type { HeatShades } from './use-heat-shades.ts';
import styles from './year-calendar.module.css';

const text = en.days.year;

interface Props {
  readonly shades: HeatShades;
  /** Whether some day came from another logger. */
  readonly imported: boolean;
}

/** What shades and marks mean. */
export function HeatLegend({ shades: { colours, width }, imported }: Props) {
  const { units } = useChartLook();
  const bound = (index: number) => String(Number((width * index).toPrecision(6)));
  return (
    <div className={styles['legend']}>
      <p>{text.legend(units.heat)}</p>
      <ul className="number">
        <li>
          <span className={styles['swatch']} aria-hidden="true" />
          {text.noHeat}
        </li>
        {colours.map((background, index) => (
          <li key={background}>
            <span className={styles['swatch']} style={{ background }} aria-hidden="true" />
            {text.between(bound(index), bound(index + 1))}
          </li>
        ))}
        <li>
          <span aria-hidden="true">{text.marks.alarm}</span>
          {text.alarm}
        </li>
        <li>
          <span aria-hidden="true">{text.marks.gap}</span>
          {text.gap}
        </li>
        {imported ? (
          <li>
            <span aria-hidden="true">{text.marks.imported}</span>
            {text.imported}
          </li>
        ) : null}
        <li>
          <span className={`${styles['swatch']} ${styles['missing']}`} aria-hidden="true" />
          {en.days.noLog}
        </li>
      </ul>
    </div>
  );
}
