import type { DaySummary } from '../../../../shared-types/log.ts';
import { useFormPart } from '../../setpoints/use-form-part.ts';
import { selectSweep, useTuning } from '../../store/tuning-store.ts';
import { FitCard } from '../fit/fit-card.tsx';
import { useOlderFit } from '../fit/use-older-fit.ts';
import { HeavyNote } from '../heavy-note.tsx';
import { ReplayHead } from '../replay-head.tsx';
import { newRange } from './range-draft.ts';
import { readSweep } from './read-sweep.ts';
import { SweepCard } from './sweep-card.tsx';
import { putSweepForm, type SweepForm, useSweepForm } from './sweep-form.ts';
import { SweepView } from './sweep-view.tsx';

interface Props {
  readonly site: string;
  readonly asked: string | null;
  readonly days: readonly DaySummary[];
  readonly today: string | undefined;
}

/** Days that a sweep takes unless told otherwise. A design choice. */
const usualDays = '7';

/** Many setpoints over many days, and what more heat costs. */
export function ManySetpoints({ site, asked, days, today }: Props) {
  const part = useFormPart(site);
  const { inForce, temperature } = part;
  const dates = days.map(({ day }) => day).sort();
  const first: SweepForm = {
    ranges: [newRange('startDifferenceK', inForce, temperature)],
    by: 'newest',
    count: usualDays,
    from: dates[0] ?? '',
    to: dates.at(-1) ?? '',
  };
  const form = useSweepForm(site, first);
  const plan = readSweep(form, days, today, temperature);
  const run = useTuning(selectSweep(site));
  const olderFit = useOlderFit(site, run);
  const report = run?.outcome.state === 'ready' ? run.outcome.result : undefined;
  const old =
    run !== null && JSON.stringify([run.days, run.ranges]) !== JSON.stringify([plan.days, plan.ranges]);
  return (
    <>
      <ReplayHead part="many" asked={asked} />
      <HeavyNote site={site} />
      <SweepCard
        {...{ site, form, plan, run, inForce, temperature }}
        onForm={(next) => putSweepForm(site, next)}
      />
      {report === undefined ? null : <SweepView {...{ site, report, old, olderFit, part }} />}
      <FitCard site={site} days={days} />
    </>
  );
}
