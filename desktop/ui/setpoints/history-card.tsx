import { useEffect, useState } from 'react';
import { settingTitle } from '../../../shared-types/setting-title.ts';
import { Card } from '../shell/card.tsx';
import { useFeed } from '../shell/feed-context.ts';
import { LoadedView } from '../shell/loaded-view.tsx';
import { useTimes } from '../shell/use-formats.ts';
import { selectDoor, selectLookOnly } from '../store/live-selectors.ts';
import { useLive } from '../store/live-store.ts';
import { selectChanges, useSettings } from '../store/settings-store.ts';
import { en } from '../text/en.ts';
import { type PastChange, pastChanges, undoOf } from './change-history.ts';
import { editedNames, withValues } from './draft.ts';
import { putDraft } from './draft-store.ts';
import type { FormPart } from './form-part.ts';
import styles from './setpoints.module.css';
import { settingText } from './setting-value.ts';
import { SmallButton } from './small-button.tsx';

const text = en.setpoints.history;

/** Changes of settings that the log knows, newest first, each with a way back. */
export function HistoryCard({ revision, ...part }: FormPart & { readonly revision: number }) {
  const { site } = part;
  const feed = useFeed();
  const door = useLive(selectDoor);
  const changes = useSettings(selectChanges(site));
  const [ready, setReady] = useState(false);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another revision means another entry in the log
  useEffect(() => {
    setReady(false);
    if (door === 'open') void feed.loadChanges(site);
  }, [feed, door, site, revision]);
  return (
    <Card heading={text.heading}>
      <p role="status">{ready && editedNames(part.draft).length > 0 ? text.ready : ''}</p>
      <LoadedView loaded={changes} onAgain={() => void feed.loadChanges(site)}>
        {(events) => {
          const list = pastChanges(events);
          if (list.length === 0) return <p className={styles['soft']}>{text.none}</p>;
          return (
            <ul className={styles['history']}>
              {list.map((change) => (
                <li key={`${change.atMs} ${change.revision}`}>
                  <OneChange {...part} change={change} onUndo={() => setReady(true)} />
                </li>
              ))}
            </ul>
          );
        }}
      </LoadedView>
    </Card>
  );
}

interface OneProps extends FormPart {
  readonly change: PastChange;
  readonly onUndo: () => void;
}

function OneChange({ change, temperature, ...part }: OneProps) {
  const times = useTimes();
  const when = times.instant(change.atMs);
  const facts = [
    text.byWhom(change.who),
    ...(change.revision === null ? [] : [text.revision(change.revision)]),
  ];
  return (
    <>
      <p>
        <time className="number" dateTime={new Date(change.atMs).toISOString()}>
          {when}
        </time>{' '}
        <span className={styles['soft']}>{facts.join(', ')}</span>
      </p>
      <ul className={styles['changes']}>
        {change.changes.map(({ name, before, after }) => (
          <li key={name}>
            {en.setpoints.changes.line(
              settingTitle(name),
              before === null ? text.unknown : settingText(name, before, temperature),
              settingText(name, after, temperature),
            )}
          </li>
        ))}
      </ul>
      <UndoButton {...part} change={change} when={when} />
    </>
  );
}

function UndoButton({
  site,
  draft,
  inForce,
  change,
  when,
  onUndo,
}: Omit<OneProps, 'temperature'> & { readonly when: string }) {
  const lookOnly = useLive(selectLookOnly);
  const undo = undoOf(change, inForce);
  if (undo.kind !== 'possible')
    return <p className={styles['soft']}>{undo.kind === 'done' ? text.undone : text.noBefore}</p>;
  if (lookOnly) return null;
  return (
    <SmallButton
      label={text.undoOf(when)}
      onClick={() => {
        putDraft(site, withValues(draft, undo.values));
        onUndo();
      }}
    >
      {text.undo}
    </SmallButton>
  );
}
