import type { DaySummary } from '../../../shared-types/log.ts';
import { KeptDays } from '../days/kept-days.tsx';
import { useToday } from '../days/use-today.ts';
import { HeavyNote } from '../replay/heavy-note.tsx';
import head from '../replay/replay-head.module.css';
import screen from '../replay/replay-screen.module.css';
import { selectPanCheck, useTuning } from '../store/tuning-store.ts';
import { en } from '../text/en.ts';
import { DaysCard } from './days-card.tsx';
import { PanAnswer } from './pan-answer.tsx';
import { PanCautions } from './pan-cautions.tsx';
import { putPanForm, usePanForm } from './pan-form.ts';
import { firstPanForm, readPanForm } from './read-pan-form.ts';
import { useKeptFit } from './use-kept-fit.ts';

const text = en.panCheck;

/** Whether the pan gathers and loses as it did on earlier days. */
export default function PanCheckScreen() {
  return (
    <div className={screen['replay']}>
      <div className={head['words']}>
        <h1 className={head['title']}>{text.title}</h1>
        <p>{text.lead}</p>
      </div>
      <KeptDays>{(site, days) => <Check key={site} site={site} days={days} />}</KeptDays>
      <PanCautions />
    </div>
  );
}

interface Props {
  readonly site: string;
  readonly days: readonly DaySummary[];
}

function Check({ site, days }: Props) {
  const today = useToday();
  const form = usePanForm(site, firstPanForm(days, today));
  const plan = readPanForm(form, days, today);
  const run = useTuning(selectPanCheck(site));
  const olderFit = useKeptFit(site, run);
  const old =
    run !== null &&
    JSON.stringify([run.days, run.referenceDays]) !== JSON.stringify([plan.days, plan.referenceDays]);
  return (
    <>
      <HeavyNote site={site} />
      <DaysCard {...{ site, form, plan, run }} onForm={(next) => putPanForm(site, next)} />
      {run?.outcome.state === 'ready' ? (
        <PanAnswer
          check={run.outcome.result}
          asked={new Set([...run.days, ...run.referenceDays]).size}
          old={old}
          olderFit={olderFit}
        />
      ) : null}
    </>
  );
}
