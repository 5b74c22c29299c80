import { Button } from '@mantine/core';
import { useState } from 'react';
import { Late, latePart } from '../../late-part.tsx';
import { selectLookOnly } from '../../store/live-selectors.ts';
import { useLive } from '../../store/live-store.ts';
import { en } from '../../text/en.ts';
import styles from './foreign.module.css';

const foreignCard = latePart(() => import('./foreign-card.tsx'));

/** The way to days of another logger; open only once somebody wants it. */
export function ForeignPart({ site }: { readonly site: string }) {
  const [open, setOpen] = useState(false);
  const lookOnly = useLive(selectLookOnly);
  if (open) return <Late part={foreignCard} props={{ site, onClose: () => setOpen(false) }} />;
  return (
    <div className={styles['row']}>
      <Button variant="default" disabled={lookOnly} onClick={() => setOpen(true)}>
        {en.foreign.open}
      </Button>
      {lookOnly ? <span className={styles['soft']}>{en.requests.lookOnly}</span> : null}
    </div>
  );
}
