import { Button, NativeSelect } from '@mantine/core';
import { useState } from 'react';
import {
  type Clash,
  clashes,
  type ImportMap,
  importedName,
  type TakenIn,
} from '../../../../shared-types/foreign-log.ts';
import { useFeed } from '../../shell/feed-context.ts';
import { JobLine } from '../../shell/job-line.tsx';
import { withSite } from '../../shell/site-address.ts';
import { type ImportRun, useImport } from '../../store/import-store.ts';
import { en } from '../../text/en.ts';
import styles from './foreign.module.css';
import { ReportView } from './report-view.tsx';

const text = en.foreign;

interface Props {
  readonly site: string;
  /** Undefined while something is still to be said. */
  readonly map: ImportMap | undefined;
}

/** A look at what is understood, then the days themselves, each with its outcome. */
export function RunPart({ site, map }: Props) {
  const feed = useFeed();
  const run = useImport((state) => state.run);
  const [clash, setClash] = useState<Clash>('keep');
  const [looked, setLooked] = useState('');
  const asked = JSON.stringify([map, clash]);
  const running = run?.outcome.state === 'running';
  // What was understood of other columns is no ground to take days in.
  const report = run?.outcome.state === 'ready' && looked === asked ? run.outcome.result.report : undefined;
  const understood = report !== undefined && report.rowsTaken > 0;
  const begin = (write: boolean) => {
    if (map === undefined) return;
    setLooked(asked);
    void feed.takeIn(site, map, { clash, write });
  };
  return (
    <>
      <div className={styles['fields']}>
        <NativeSelect
          label={text.clash}
          value={clash}
          data={clashes.map((value) => ({ value, label: text.clashes[value] }))}
          onChange={(event) => setClash(event.currentTarget.value as Clash)}
        />
      </div>
      <p className={styles['soft']}>{text.takeSays(importedName(site))}</p>
      <div className={styles['row']}>
        <Button disabled={map === undefined || running} onClick={() => begin(false)}>
          {text.look}
        </Button>
        <Button
          variant="default"
          disabled={!understood || running || run?.write === true}
          onClick={() => begin(true)}
        >
          {text.take}
        </Button>
      </div>
      <RunLine run={run} />
      {report === undefined ? null : <ReportView report={report} />}
    </>
  );
}

/** How far it is, or what came of it; the regions are there before it. */
function RunLine({ run }: { readonly run: ImportRun | null }) {
  const feed = useFeed();
  const taken = run?.write === true && run.outcome.state === 'ready' ? run.outcome.result : undefined;
  return (
    <>
      <JobLine outcome={run?.outcome} onCancel={feed.cancelImport} />
      <p role="status">{taken === undefined ? null : <Taken {...taken} />}</p>
    </>
  );
}

function Taken({ site, report }: TakenIn) {
  const { stepsAdded, stepsChanged, daysChanged } = report;
  return (
    <>
      {stepsAdded + stepsChanged === 0 ? text.nothingNew : text.taken(text.days(daysChanged), stepsAdded)}{' '}
      {stepsChanged === 0 ? null : text.changed(stepsChanged)}{' '}
      <a href={withSite('#/days', site)}>{text.toDays}</a>
    </>
  );
}
