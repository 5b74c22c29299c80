import { Button } from '@mantine/core';
import { useState } from 'react';
import type { SaveOutcome } from '../../../shared-types/saved-text.ts';
import { fileName } from '../format/csv.ts';
import { saveFile } from '../save-file.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import { en } from '../text/en.ts';
import styles from './tuning.module.css';

interface Props {
  readonly label: string;
  /** What the file is called by, before its end. */
  readonly nameParts: readonly string[];
  /** Makes the text when it is wanted. */
  readonly table: () => string;
}

/** Saves a table as CSV and says under which name. */
export function SaveTable({ label, nameParts, table }: Props) {
  const [outcome, setOutcome] = useState<SaveOutcome | undefined>(undefined);
  const name = fileName(nameParts, 'csv');
  return (
    <>
      <Button
        variant="default"
        onClick={() => void saveFile(name, 'text/csv', table()).then((came) => setOutcome(came))}
      >
        {label}
      </Button>
      <span role="status" className={styles['soft']}>
        {outcome?.kind === 'saved' ? en.tuning.other.saved(name) : ''}
      </span>
      {outcome?.kind === 'failed' ? (
        <ProblemNote problem={{ severity: 'error', text: outcome.text }} />
      ) : null}
    </>
  );
}
