import { Button } from '@mantine/core';
import { useEffect } from 'react';
import { importedName } from '../../../../shared-types/foreign-log.ts';
import { Card } from '../../shell/card.tsx';
import { useFeed } from '../../shell/feed-context.ts';
import { ProblemNote } from '../../shell/problem-note.tsx';
import { withSite } from '../../shell/site-address.ts';
import { useNumbers } from '../../shell/use-formats.ts';
import { useImport } from '../../store/import-store.ts';
import { selectSiteNames, selectTimeZone } from '../../store/live-selectors.ts';
import { useLive } from '../../store/live-store.ts';
import { en } from '../../text/en.ts';
import { FileField } from './file-field.tsx';
import styles from './foreign.module.css';
import { MapForm } from './map-form.tsx';

const text = en.foreign;

interface Props {
  readonly site: string;
  readonly onClose: () => void;
}

/** Takes days of another logger in, from the file to the days. */
export default function ForeignCard({ site, onClose }: Props) {
  const feed = useFeed();
  const zone = useLive(selectTimeZone);
  const hasDays = useLive(selectSiteNames).includes(importedName(site));
  const head = useImport((state) => state.head);
  useEffect(() => {
    void feed.loadMaps();
    return feed.dropFile;
  }, [feed]);
  return (
    <Card
      heading={text.heading}
      aside={
        <Button variant="default" size="compact-sm" onClick={onClose}>
          {text.close}
        </Button>
      }
    >
      <div className={styles['panel']}>
        <p className={styles['lead']}>{text.lead}</p>
        {hasDays && importedName(site) !== site ? (
          <p>
            <a href={withSite('#/days', importedName(site))}>{text.toBase}</a>
          </p>
        ) : null}
        <FileField />
        <Sending />
        {head?.state === 'failed' ? <ProblemNote problem={head.problem} /> : null}
        {head?.state === 'ready' ? (
          // Another header is another file, or the same read in another way.
          <MapForm key={JSON.stringify(head.value)} head={head.value} site={site} zone={zone} />
        ) : null}
      </div>
    </Card>
  );
}

function Sending() {
  const file = useImport((state) => state.file);
  const numbers = useNumbers();
  const onItsWay = file !== null && file.upload === null && file.problem === null;
  return (
    <>
      <p role="status">{onItsWay ? text.sending(file.name, numbers.percent(file.sentFraction)) : null}</p>
      {file?.problem ? <ProblemNote problem={file.problem} /> : null}
    </>
  );
}
