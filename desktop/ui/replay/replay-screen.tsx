import type { DaySummary } from '../../../shared-types/log.ts';
import { newestComplete } from '../days/calendar.ts';
import { KeptDays } from '../days/kept-days.tsx';
import { useToday } from '../days/use-today.ts';
import type { ReplayPart } from '../shell/route.ts';
import { ManySetpoints } from './many/many-setpoints.tsx';
import { OtherSetpoints } from './other/other-setpoints.tsx';
import styles from './replay-screen.module.css';
import { SameAgain } from './same-again.tsx';

interface Props {
  readonly day: string | null;
  readonly part: ReplayPart | undefined;
}

/** Logged days again: decided by the same logic, lived under other setpoints, or under many. */
export default function ReplayScreen({ day, part }: Props) {
  return <KeptDays>{(site, days) => <Replay site={site} asked={day} part={part} days={days} />}</KeptDays>;
}

interface ReplayProps {
  readonly site: string;
  readonly asked: string | null;
  readonly part: ReplayPart | undefined;
  readonly days: readonly DaySummary[];
}

function Replay({ site, asked, part, days }: ReplayProps) {
  const today = useToday();
  const day = asked ?? newestComplete(days, today) ?? '';
  const common = { site, asked, day, days };
  return (
    <div className={styles['replay']}>
      {part === undefined ? <SameAgain {...common} /> : null}
      {part === 'other' ? <OtherSetpoints {...common} /> : null}
      {part === 'many' ? <ManySetpoints {...common} today={today} /> : null}
    </div>
  );
}
