import { settingTitle } from '../../../shared-types/setting-title.ts';
import { type Settings, settingNames } from '../../../shared-types/settings.ts';
import type { WhatIfReport } from '../../../shared-types/what-if.ts';
import type { TemperatureUnit } from '../format/units.ts';
import { useFeed } from '../shell/feed-context.ts';
import { JobLine } from '../shell/job-line.tsx';
import { useNumbers, useSentence, useTimes } from '../shell/use-formats.ts';
import { selectWhatIf, useSettings } from '../store/settings-store.ts';
import { en } from '../text/en.ts';
import styles from './setpoints.module.css';
import { settingText } from './setting-value.ts';
import { countRows, sideRows, type WhatIfRow } from './what-if-rows.ts';

const text = en.setpoints.whatIf;

interface Props {
  readonly site: string;
  /** Settings as they are in the form. */
  readonly settings: Settings;
  readonly temperature: TemperatureUnit;
}

/** How far the question is, or its answer; nothing before it was asked. */
export function WhatIfResult({ site, settings, temperature }: Props) {
  const feed = useFeed();
  const run = useSettings(selectWhatIf(site));
  return (
    <div>
      <JobLine outcome={run?.outcome} onCancel={() => feed.cancelWhatIf()} />
      {run?.outcome.state === 'ready' ? (
        <Report
          report={run.outcome.result}
          asked={run.settings}
          old={JSON.stringify(run.settings) !== JSON.stringify(settings)}
          temperature={temperature}
        />
      ) : null}
    </div>
  );
}

interface ReportProps {
  readonly report: WhatIfReport;
  readonly asked: Settings;
  readonly old: boolean;
  readonly temperature: TemperatureUnit;
}

function Report({ report, asked, old, temperature }: ReportProps) {
  const numbers = useNumbers();
  const times = useTimes();
  const inUnits = useSentence();
  const { day, steps, differences, firstDifference, remarks } = report;
  return (
    <div className={styles['report']}>
      <h3>{times.day(day)}</h3>
      {old ? <p className={styles['old']}>{text.old}</p> : null}
      <p role="status">
        {firstDifference === null
          ? text.same
          : `${text.alike(times.clockWithSeconds(firstDifference.atMs))} ${text.differs(numbers.count(differences), numbers.count(steps))}`}
      </p>
      {firstDifference === null ? null : (
        <Rows caption={text.parting} rows={sideRows(firstDifference, numbers, inUnits)} />
      )}
      <Rows caption={firstDifference === null ? text.counts : text.hint} rows={countRows(report, numbers)} />
      <Compared report={report} asked={asked} temperature={temperature} />
      {remarks.map((remark) => (
        <p key={remark} className={styles['soft']}>
          {inUnits(remark)}
        </p>
      ))}
    </div>
  );
}

function Rows({ caption, rows }: { readonly caption: string; readonly rows: readonly WhatIfRow[] }) {
  return (
    <table className={`ruled ${styles['table']}`}>
      <caption>{caption}</caption>
      <thead>
        <tr>
          <th scope="col">{text.what}</th>
          <th scope="col">{text.base}</th>
          <th scope="col">{text.other}</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ title, base, other }) => (
          <tr key={title}>
            <th scope="row">{title}</th>
            <td>{base}</td>
            <td className={base === other ? undefined : styles['differs']}>{other}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** Against what the form's values were held: the settings of that day may be older than those in force. */
function Compared({ report: { settingsThen }, asked, temperature }: Omit<ReportProps, 'old'>) {
  if (settingsThen === null) return null;
  const names = settingNames.filter((name) => settingsThen[name] !== asked[name]);
  if (names.length === 0) return <p className={styles['soft']}>{text.equal}</p>;
  return (
    <>
      <p className={styles['soft']}>{text.compared}</p>
      <ul className={styles['changes']}>
        {names.map((name) => (
          <li key={name}>
            {en.setpoints.changes.line(
              settingTitle(name),
              settingText(name, settingsThen[name], temperature),
              settingText(name, asked[name], temperature),
            )}
          </li>
        ))}
      </ul>
    </>
  );
}
