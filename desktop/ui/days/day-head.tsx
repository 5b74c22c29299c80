import type { Route } from '../shell/route.ts';
import { useAddress } from '../shell/use-address.ts';
import { useTimes } from '../shell/use-formats.ts';
import { selectDays, useHistory } from '../store/history-store.ts';
import { readyValue } from '../store/loaded.ts';
import { en } from '../text/en.ts';
import styles from './day-head.module.css';
import { useDayKeys } from './use-day-keys.ts';

const text = en.days;

/** Which day it is, and the way to its neighbours among the logged days. */
export function DayHead({ site, day }: { readonly site: string; readonly day: string }) {
  const times = useTimes();
  const days = readyValue(useHistory(selectDays(site))) ?? [];
  const logged = days.map((summary) => summary.day).sort();
  const before = logged.findLast((one) => one < day);
  const after = logged.find((one) => one > day);
  const address = useAddress();
  const to = (other: string | undefined) =>
    other === undefined ? undefined : address({ screen: 'days', day: other });
  useDayKeys({ before: to(before), after: to(after) });
  return (
    <div className={styles['head']}>
      <h1 className={styles['title']}>{times.day(day)}</h1>
      <nav aria-label={text.title} className={styles['links']}>
        <Link to={{ screen: 'days', day: null }}>{text.back}</Link>
        {before === undefined ? null : <Link to={{ screen: 'days', day: before }}>{text.dayBefore}</Link>}
        {after === undefined ? null : <Link to={{ screen: 'days', day: after }}>{text.dayAfter}</Link>}
        <Link to={{ screen: 'replay', day }}>{text.toReplay}</Link>
      </nav>
      <p className={styles['keys']}>{text.keys}</p>
    </div>
  );
}

function Link({ to, children }: { readonly to: Route; readonly children: string }) {
  const address = useAddress();
  return (
    <a href={address(to)} className={styles['link']}>
      {children}
    </a>
  );
}
