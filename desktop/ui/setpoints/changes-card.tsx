import { Button } from '@mantine/core';
import { useState } from 'react';
import { Card } from '../shell/card.tsx';
import { useFeed } from '../shell/feed-context.ts';
import { selectListening, selectLookOnly } from '../store/live-selectors.ts';
import { useLive } from '../store/live-store.ts';
import { en } from '../text/en.ts';
import { ChangeDialog } from './change-dialog.tsx';
import { ChangeList } from './change-list.tsx';
import { ChangeOutcome } from './change-outcome.tsx';
import { changedElsewhere, editedNames, newDraft, patchOf } from './draft.ts';
import { putDraft } from './draft-store.ts';
import { FaultList } from './fault-list.tsx';
import type { FormPart } from './form-part.ts';
import { RemarkList } from './remark-list.tsx';
import styles from './setpoints.module.css';

const text = en.setpoints.changes;

/** What would change, what stands against it, and the way to apply it. */
export function ChangesCard(part: FormPart & { readonly revision: number }) {
  const { site, inForce, draft, faults, revision } = part;
  const feed = useFeed();
  const listening = useLive(selectListening);
  const lookOnly = useLive(selectLookOnly);
  const [confirming, setConfirming] = useState(false);
  const count = editedNames(draft).length;
  const ready = faults.length === 0 && changedElsewhere(draft, inForce).length === 0;
  const apply = () => {
    setConfirming(false);
    void feed.changeSettings(site, patchOf(draft), revision);
  };
  return (
    <Card heading={text.heading}>
      <ChangeOutcome site={site} />
      {lookOnly ? <p>{text.lookOnly}</p> : null}
      {count === 0 ? (
        lookOnly ? null : (
          <p className={styles['soft']}>{text.none}</p>
        )
      ) : (
        <>
          <p>{text.summary(count)}</p>
          <ChangeList draft={draft} temperature={part.temperature} />
          <FaultList faults={faults} />
          <RemarkList {...part} />
          {listening ? null : <p className={styles['soft']}>{text.notListening}</p>}
          <div className={styles['buttons']}>
            <Button disabled={!listening || !ready} onClick={() => setConfirming(true)}>
              {text.apply(count)}
            </Button>
            <Button variant="default" onClick={() => putDraft(site, newDraft(inForce))}>
              {text.discard}
            </Button>
          </div>
        </>
      )}
      <ChangeDialog
        opened={confirming && ready}
        draft={draft}
        temperature={part.temperature}
        onConfirm={apply}
        onCancel={() => setConfirming(false)}
      />
    </Card>
  );
}
