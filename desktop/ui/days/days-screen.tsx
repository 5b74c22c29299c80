import { selectSiteName } from '../store/live-selectors.ts';
import { useLive } from '../store/live-store.ts';
import { AllDays } from './all-days.tsx';
import { OneDay } from './one-day.tsx';
import { useDays } from './use-days.ts';

/** Which days were good, which odd; and each of them in detail. */
export default function DaysScreen({ day }: { readonly day: string | null }) {
  const site = useLive(selectSiteName);
  useDays(site);
  if (site === null) return null;
  return day === null ? <AllDays site={site} /> : <OneDay key={day} site={site} day={day} />;
}
