import { type Channel, channelMeaning, channels } from '../../../../shared-types/channels.ts';
import type { ImportReport, UnderstoodRow } from '../../../../shared-types/foreign-log.ts';
import { seriesText } from '../../format/series-value.ts';
import { durationText } from '../../format/times.ts';
import { useNumbers, useTimes } from '../../shell/use-formats.ts';
import { selectTimeZone } from '../../store/live-selectors.ts';
import { useLive } from '../../store/live-store.ts';
import { en } from '../../text/en.ts';
import styles from './foreign.module.css';
import { MissList } from './miss-list.tsx';

const text = en.foreign;

/** What was understood of a file: its span, its first rows, and what was not. */
export function ReportView({ report }: { readonly report: ImportReport }) {
  const times = useTimes();
  const timeZone = useLive(selectTimeZone);
  const { rows, rowsTaken, firstMs, lastMs, usualStepMs, gaps, days, daysWithHeat } = report;
  const { instant: moment } = times;
  return (
    <>
      <h3>{text.understood}</h3>
      <ul className={styles['list']}>
        <li>{text.rows(rowsTaken, rows)}</li>
        {firstMs === null || lastMs === null ? null : (
          <li>{text.span(moment(firstMs), moment(lastMs), timeZone)}</li>
        )}
        {usualStepMs === null ? null : <li>{text.step(durationText(usualStepMs), gaps)}</li>}
        <li>
          {text.heat(text.days(days), daysWithHeat)} {daysWithHeat < days ? text.noHeat : null}
        </li>
        <li>{text.isNew(report.stepsAdded)}</li>
        {report.stepsChanged === 0 ? null : <li>{text.changed(report.stepsChanged)}</li>}
        {report.repeatedTimes === 0 ? null : <li>{text.repeated(report.repeatedTimes)}</li>}
      </ul>
      {report.firstRows.length === 0 ? null : <FirstRows rows={report.firstRows} moment={moment} />}
      <MissList report={report} />
    </>
  );
}

interface RowsProps {
  readonly rows: readonly UnderstoodRow[];
  readonly moment: (atMs: number) => string;
}

function FirstRows({ rows, moment }: RowsProps) {
  const numbers = useNumbers();
  const shown = channels.filter((channel) => rows.some(({ values }) => values[channel] !== undefined));
  const cell = ({ values }: UnderstoodRow, channel: Channel) => {
    const value = values[channel];
    return value === undefined ? '' : seriesText(channel, value, numbers);
  };
  return (
    <>
      <h3>{text.firstRows}</h3>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls has to be reached by the keyboard */}
      <section className={styles['frame']} aria-label={text.firstRows} tabIndex={0}>
        <table className={`ruled number ${styles['table']}`}>
          <thead>
            <tr>
              <th scope="col">{text.instant}</th>
              {shown.map((channel) => (
                <th key={channel} scope="col">
                  {channelMeaning[channel].title}
                </th>
              ))}
              <th scope="col">{text.pump}</th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row, place) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: two rows may be of one instant, and none moves.
              <tr key={place}>
                <th scope="row">{moment(row.atMs)}</th>
                {shown.map((channel) => (
                  <td key={channel}>{cell(row, channel)}</td>
                ))}
                <td>{row.pumpFraction === null ? '' : numbers.percent(row.pumpFraction)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </>
  );
}
