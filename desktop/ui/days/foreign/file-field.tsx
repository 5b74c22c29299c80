import { useId, useState } from 'react';
import { mostUploadBytes } from '../../../../shared-types/foreign-log.ts';
import { useFeed } from '../../shell/feed-context.ts';
import { ProblemNote } from '../../shell/problem-note.tsx';
import { en } from '../../text/en.ts';
import styles from './foreign.module.css';

const text = en.foreign;
const most = text.megabytes(mostUploadBytes / 1024 / 1024);

/** Chooses the file; what cannot be sent is said at once. */
export function FileField() {
  const feed = useFeed();
  const id = useId();
  const [problem, setProblem] = useState<Parameters<typeof ProblemNote>[0]['problem'] | undefined>(undefined);
  const choose = (file: File | undefined) => {
    setProblem(undefined);
    if (file === undefined) feed.dropFile();
    else if (file.size === 0) setProblem({ severity: 'error', text: text.empty });
    else if (file.size > mostUploadBytes)
      setProblem({ severity: 'error', text: text.tooLarge(most), tip: text.tooLargeTip });
    else void feed.sendFile(file);
  };
  return (
    <>
      <label className={styles['label']} htmlFor={id}>
        {text.file}
      </label>
      <input
        id={id}
        type="file"
        accept=".csv,.txt,.tsv,text/csv,text/plain"
        className={styles['file']}
        aria-describedby={`${id}-hint`}
        onChange={(event) => choose(event.currentTarget.files?.[0])}
      />
      <p id={`${id}-hint`} className={styles['soft']}>
        {text.fileHint(most)}
      </p>
      {problem === undefined ? null : <ProblemNote problem={problem} />}
    </>
  );
}
