import { useMediaQuery } from '@mantine/hooks';
import type { DaySummary } from '../../../shared-types/log.ts';
import { inLine } from '../format/numbers.ts';
import { durationText } from '../format/times.ts';
import { useAddress } from '../shell/use-address.ts';
import { useNumbers, useTimes } from '../shell/use-formats.ts';
import { en } from '../text/en.ts';
import styles from './day-list.module.css';
import { dayRemarks } from './day-remarks.ts';
import { told } from './told.ts';
import { useToday } from './use-today.ts';

const { columns } = en.days;

/** The days as a table, newest first; on a small screen with what matters most. */
export function DayList({ days }: { readonly days: readonly DaySummary[] }) {
  const wide = useMediaQuery('(min-width: 50em)', undefined, { getInitialValueInEffect: false });
  const today = useToday();
  const newestFirst = [...days].sort((a, b) => b.day.localeCompare(a.day));
  return (
    <table className={styles['table']}>
      <thead>
        <tr>
          <th scope="col">{columns.day}</th>
          <th scope="col">{columns.heatHome}</th>
          {wide ? (
            <WideHeads />
          ) : (
            <th scope="col">
              {columns.starts}, {columns.fills.toLowerCase()}
            </th>
          )}
        </tr>
      </thead>
      <tbody className="number">
        {newestFirst.map((summary) => (
          <Row key={summary.day} summary={summary} wide={wide === true} isToday={summary.day === today} />
        ))}
      </tbody>
    </table>
  );
}

function WideHeads() {
  const heads = ['heatLost', 'starts', 'fills', 'pumpEnergy', 'runTime', 'alarms', 'logged'] as const;
  return heads.map((name) => (
    <th key={name} scope="col">
      {columns[name]}
    </th>
  ));
}

interface RowProps {
  readonly summary: DaySummary;
  readonly wide: boolean;
  readonly isToday: boolean;
}

function Row({ summary, wide, isToday }: RowProps) {
  const address = useAddress();
  const times = useTimes();
  const numbers = useNumbers();
  const { day, starts, fills, alarms } = summary;
  const heat = (valueJ: number) => inLine(numbers.heat(valueJ));
  const remarks = dayRemarks(summary, isToday, numbers);
  return (
    <tr>
      <th scope="row">
        <a href={address({ screen: 'days', day })}>{times.shortDay(day)}</a>
        {wide
          ? null
          : remarks.map(({ kind, text }) => (
              <span key={kind} className={styles[kind]}>
                {text}
              </span>
            ))}
      </th>
      <td className={styles['heat']}>{told(summary.heatHomeJ, heat)}</td>
      {wide ? (
        <>
          <td>{told(summary.heatLostJ, heat)}</td>
          <td>{numbers.count(starts)}</td>
          <td>{told(fills, numbers.count)}</td>
          <td>{told(summary.electricityJ, heat)}</td>
          <td>{durationText(summary.pumpRunS * 1000)}</td>
          <td className={alarms ? styles['alarms'] : undefined}>{told(alarms, numbers.count)}</td>
          <td>
            {isToday ? en.days.today : numbers.percent(Math.floor(summary.coveredFraction * 100) / 100)}
          </td>
        </>
      ) : (
        <td>
          {en.days.starts(starts)} {fills === null ? null : en.days.fills(fills)}
        </td>
      )}
    </tr>
  );
}
