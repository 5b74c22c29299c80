import { Button } from '@mantine/core';
import { useState } from 'react';
import type { DaySummary } from '../../../shared-types/log.ts';
import { csvText, fileName } from '../format/csv.ts';
import { saveFile } from '../save-file.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import { useChartLook } from '../shell/use-formats.ts';
import { selectSiteName } from '../store/live-selectors.ts';
import { useLive } from '../store/live-store.ts';
import { en } from '../text/en.ts';
import { daysTable } from './export-tables.ts';
import styles from './save-row.module.css';

/** Saves all logged days, one row each. */
export function DaysExport({ days }: { readonly days: readonly DaySummary[] }) {
  const { units, timeZone } = useChartLook();
  const site = useLive(selectSiteName) ?? '';
  const [fault, setFault] = useState<string | undefined>(undefined);
  const save = async () => {
    const table = csvText(daysTable(days, timeZone, units));
    const outcome = await saveFile(fileName([site, 'days'], 'csv'), 'text/csv', table);
    setFault(outcome.kind === 'failed' ? outcome.text : undefined);
  };
  return (
    <div className={styles['row']}>
      <Button variant="default" onClick={() => void save()}>
        {en.days.save.allDays}
      </Button>
      {fault === undefined ? null : <ProblemNote problem={{ severity: 'error', text: fault }} />}
    </div>
  );
}
