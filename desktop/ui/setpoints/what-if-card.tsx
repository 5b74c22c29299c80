import { Button, NativeSelect } from '@mantine/core';
import { useState } from 'react';
import { useDays } from '../days/use-days.ts';
import { useToday } from '../days/use-today.ts';
import { Card } from '../shell/card.tsx';
import { useFeed } from '../shell/feed-context.ts';
import { LoadedView } from '../shell/loaded-view.tsx';
import { useTimes } from '../shell/use-formats.ts';
import { selectDays, useHistory } from '../store/history-store.ts';
import { en } from '../text/en.ts';
import { draftSettings, editedNames } from './draft.ts';
import type { FormPart } from './form-part.ts';
import styles from './setpoints.module.css';
import { WhatIfResult } from './what-if-result.tsx';

const text = en.setpoints.whatIf;

/** What the changes would have decided on a logged day, before they are applied. */
export function WhatIfCard(part: FormPart) {
  const feed = useFeed();
  useDays(part.site);
  const days = useHistory(selectDays(part.site));
  return (
    <Card heading={text.heading}>
      <p className={styles['soft']}>{text.honest}</p>
      <LoadedView loaded={days} onAgain={() => void feed.loadDays(part.site)}>
        {(list) =>
          list.length === 0 ? <p>{text.noDays}</p> : <WhatIf {...part} days={list.map(({ day }) => day)} />
        }
      </LoadedView>
    </Card>
  );
}

function WhatIf({ site, draft, faults, temperature, days }: FormPart & { readonly days: readonly string[] }) {
  const feed = useFeed();
  const times = useTimes();
  const today = useToday();
  const [chosen, setChosen] = useState<string | null>(null);
  const day = chosen ?? yesterday(days, today);
  const settings = draftSettings(draft);
  const missing =
    editedNames(draft).length === 0 ? text.needsChange : faults.length > 0 ? text.needsValid : '';
  return (
    <>
      <div className={styles['controls']}>
        <NativeSelect
          label={text.day}
          value={day}
          data={[...days]
            .sort()
            .reverse()
            .map((value) => ({ value, label: times.day(value) }))}
          onChange={(event) => setChosen(event.currentTarget.value)}
        />
        <Button
          variant="default"
          disabled={missing !== ''}
          onClick={() => void feed.whatIf(site, day, settings)}
        >
          {text.run}
        </Button>
      </div>
      {missing === '' ? null : <p className={styles['soft']}>{missing}</p>}
      <WhatIfResult site={site} settings={settings} temperature={temperature} />
    </>
  );
}

/** The newest whole day; where there is none, the newest. */
function yesterday(days: readonly string[], today: string | undefined): string {
  const sorted = [...days].sort();
  return sorted.findLast((day) => today === undefined || day < today) ?? sorted.at(-1) ?? '';
}
