import type { ReplayReport } from '../../../shared-types/log.ts';
import { Card } from '../shell/card.tsx';
import { useFeed } from '../shell/feed-context.ts';
import { LoadedView } from '../shell/loaded-view.tsx';
import { useNumbers, useSentence } from '../shell/use-formats.ts';
import { selectReplay, useHistory } from '../store/history-store.ts';
import { en } from '../text/en.ts';
import { CausesCard } from './causes-card.tsx';
import { DifferenceCard } from './difference-card.tsx';
import { PartingsCard } from './partings-card.tsx';
import styles from './replay-result.module.css';
import { TotalsTable } from './totals-table.tsx';
import { verdictText } from './verdict.ts';

const text = en.replay;

/** What a replay found; nothing until one was asked for. */
export function ReplayResult({ site, day }: { readonly site: string; readonly day: string }) {
  const feed = useFeed();
  const replay = useHistory(selectReplay(site, day));
  if (replay === undefined) return null;
  return (
    <LoadedView loaded={replay} waiting={text.running} onAgain={() => void feed.replay(site, day)}>
      {(report) => <Report report={report} />}
    </LoadedView>
  );
}

function Report({ report }: { readonly report: ReplayReport }) {
  const numbers = useNumbers();
  const inUnits = useSentence();
  const { firstDifference, remarks, engineThen, engineNow } = report;
  const alike = report.differences === 0;
  return (
    <>
      <p role="status" className={`${styles['verdict']} ${alike ? styles['same'] : styles['different']}`}>
        <span aria-hidden="true" className={styles['mark']}>
          {alike ? '=' : '≠'}
        </span>
        {verdictText(report, numbers)}
      </p>
      <div className={styles['cards']}>
        <TotalsTable logged={report.logged} replayed={report.replayed} />
        <Card heading={text.remarks}>
          <ul className={styles['remarks']}>
            {remarks.map((remark) => (
              <li key={remark}>{inUnits(remark)}</li>
            ))}
            <li>{text.engine(engineThen.join(', ') || text.engineUnknown, engineNow)}</li>
          </ul>
        </Card>
      </div>
      {firstDifference === null ? null : <DifferenceCard difference={firstDifference} />}
      {report.byCause.length === 0 ? null : <CausesCard {...report} />}
      {report.partings === 0 ? null : <PartingsCard {...report} />}
    </>
  );
}
