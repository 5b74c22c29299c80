import { Button } from '@mantine/core';
import { useState } from 'react';
import type { DayCurves } from '../../../shared-types/log.ts';
import { saveText } from '../save-text.ts';
import { en } from '../text/en.ts';
import { dayCsv } from './day-csv.ts';
import styles from './one-day.module.css';

/** Saves the curves of the day as they are drawn, and says so when that fails. */
export function SaveDay({ site, curves }: { readonly site: string; readonly curves: DayCurves }) {
  const [fault, setFault] = useState('');
  const save = async () => {
    const outcome = await saveText({ name: `${site}-${curves.day}.csv`, text: dayCsv(curves) });
    setFault(outcome.kind === 'failed' ? outcome.text : '');
  };
  return (
    <div className={styles['save']}>
      <p role="status" className={styles['fault']}>
        {fault}
      </p>
      <Button size="xs" variant="default" onClick={() => void save()}>
        {en.days.save(curves.atMs.length.toLocaleString('en'))}
      </Button>
    </div>
  );
}
