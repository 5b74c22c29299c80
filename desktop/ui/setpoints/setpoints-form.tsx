import { useRef, useState } from 'react';
import type { SiteMessage } from '../../../shared-types/messages.ts';
import { selectTemperatureUnit, useChoices } from '../store/choices-store.ts';
import { selectLookOnly } from '../store/live-selectors.ts';
import { useLive } from '../store/live-store.ts';
import { en } from '../text/en.ts';
import { ChangesCard } from './changes-card.tsx';
import { editedNames } from './draft.ts';
import { draftFaults } from './draft-faults.ts';
import { useDraft } from './draft-store.ts';
import { ElsewhereNote } from './elsewhere-note.tsx';
import { findSettings, type ShownChoice } from './find-settings.ts';
import { HistoryCard } from './history-card.tsx';
import { ReviewBar } from './review-bar.tsx';
import { SetpointFilter } from './setpoint-filter.tsx';
import { SetpointGroup } from './setpoint-group.tsx';
import styles from './setpoints.module.css';
import { WhatIfCard } from './what-if-card.tsx';

interface Props {
  readonly site: string;
  readonly message: SiteMessage;
}

/** Every setpoint by purpose, and beside them what is changed, what it would do, and what was changed before. */
export function SetpointsForm({ site, message: { settings, settingsRevision } }: Props) {
  const temperature = useChoices(selectTemperatureUnit);
  const lookOnly = useLive(selectLookOnly);
  const draft = useDraft(site, settings);
  const [search, setSearch] = useState('');
  const [shown, setShown] = useState<ShownChoice>('all');
  const changes = useRef<HTMLDivElement>(null);
  const faults = draftFaults(draft, temperature);
  const groups = findSettings(search, shown, draft, settings);
  const common = { site, inForce: settings, draft, temperature, faults };
  return (
    <div className={styles['screen']}>
      <div>
        <h1 className={styles['title']}>{en.setpoints.title}</h1>
        <p className={styles['soft']}>
          {en.setpoints.lead} {en.setpoints.inForce(settingsRevision)}
        </p>
      </div>
      <ElsewhereNote {...common} />
      <div className={styles['columns']}>
        <div className={styles['column']}>
          <SetpointFilter
            search={search}
            onSearch={setSearch}
            shown={shown}
            onShown={setShown}
            count={groups.flatMap(({ names }) => names).length}
          />
          {groups.map((found) => (
            <SetpointGroup key={found.group} {...common} {...found} readOnly={lookOnly} />
          ))}
          <ReviewBar count={editedNames(draft).length} target={changes} />
        </div>
        <div ref={changes} tabIndex={-1} className={`${styles['column']} ${styles['beside']}`}>
          <ChangesCard {...common} revision={settingsRevision} />
          <WhatIfCard {...common} />
          <HistoryCard {...common} revision={settingsRevision} />
        </div>
      </div>
    </div>
  );
}
