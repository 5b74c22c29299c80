import { NativeSelect } from '@mantine/core';
import type { ReactNode } from 'react';
import type { DaySummary } from '../../../shared-types/log.ts';
import type { ReplayPart } from '../shell/route.ts';
import { useAddress } from '../shell/use-address.ts';
import { useTimes } from '../shell/use-formats.ts';
import { en } from '../text/en.ts';
import styles from './replay-head.module.css';
import { ReplayParts } from './replay-parts.tsx';

const text = en.replay;

interface Props {
  readonly part: ReplayPart | undefined;
  /** The day as the address names it; null where it names none. */
  readonly asked: string | null;
  /** Stands at the right of the words. */
  readonly children?: ReactNode;
}

/** What Replay is asked, and of which day. */
export function ReplayHead({ part, asked, children }: Props) {
  return (
    <>
      <div className={styles['head']}>
        <div className={styles['words']}>
          <h1 className={styles['title']}>{text.title}</h1>
          <p>{text.leads[part ?? 'same']}</p>
        </div>
        {children === undefined ? null : <div className={styles['controls']}>{children}</div>}
      </div>
      <ReplayParts part={part} day={asked} />
    </>
  );
}

interface DayProps {
  readonly part: ReplayPart | undefined;
  readonly day: string;
  readonly days: readonly DaySummary[];
}

/** Which logged day it is about. */
export function DaySelect({ part, day, days }: DayProps) {
  const address = useAddress();
  const times = useTimes();
  const newestFirst = days
    .map((summary) => summary.day)
    .sort()
    .reverse();
  // A day in the address that was never logged is shown all the same: the answer says so.
  const offered = newestFirst.includes(day) ? newestFirst : [day, ...newestFirst];
  return (
    <NativeSelect
      label={text.day}
      value={day}
      data={offered.map((value) => ({ value, label: times.day(value) }))}
      onChange={(event) => {
        const place = { screen: 'replay', day: event.currentTarget.value } as const;
        window.location.hash = address(part === undefined ? place : { ...place, part });
      }}
    />
  );
}
