import { inLine } from '../format/numbers.ts';
import { durationText } from '../format/times.ts';
import { useNumbers } from '../shell/use-formats.ts';
import { selectDays, useHistory } from '../store/history-store.ts';
import { readyValue } from '../store/loaded.ts';
import { en } from '../text/en.ts';
import styles from './day-facts.module.css';
import { dayRemarks } from './day-remarks.ts';
import { told } from './told.ts';
import { useToday } from './use-today.ts';

const { columns } = en.days;

/** A day in numbers, its heat the largest. */
export function DayFacts({ site, day }: { readonly site: string; readonly day: string }) {
  const numbers = useNumbers();
  const today = useToday();
  const days = readyValue(useHistory(selectDays(site)));
  const summary = days?.find((one) => one.day === day);
  if (summary === undefined) return null;
  const heat = summary.heatHomeJ === null ? undefined : numbers.heat(summary.heatHomeJ);
  const heatText = (valueJ: number) => inLine(numbers.heat(valueJ));
  const facts: readonly (readonly [string, string])[] = [
    [columns.heatLost, told(summary.heatLostJ, heatText)],
    [columns.pumpEnergy, told(summary.electricityJ, heatText)],
    [columns.runTime, durationText(summary.pumpRunS * 1000)],
    [columns.starts, numbers.count(summary.starts)],
    [columns.fills, told(summary.fills, numbers.count)],
    [columns.alarms, told(summary.alarms, numbers.count)],
  ];
  return (
    <dl className={`${styles['facts']} number`}>
      <div>
        <dt>{columns.heatHome}</dt>
        {heat === undefined ? (
          <dd>{en.days.untold}</dd>
        ) : (
          <dd className={styles['heat']}>
            {heat.number} <span className={styles['unit']}>{heat.unit}</span>
          </dd>
        )}
      </div>
      {facts.map(([title, value]) => (
        <div key={title}>
          <dt>{title}</dt>
          <dd>{value}</dd>
        </div>
      ))}
      {dayRemarks(summary, day === today, numbers)
        .filter((remark) => remark.kind !== 'alarms')
        .map((remark) => (
          <div key={remark.kind}>
            <dt>{remark.kind === 'imported' ? en.days.source : columns.logged}</dt>
            <dd>{remark.text}</dd>
          </div>
        ))}
    </dl>
  );
}
