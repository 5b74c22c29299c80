import type { DaySummary } from '../../../shared-types/log.ts';
import { useDays } from '../days/use-days.ts';
import { useToday } from '../days/use-today.ts';
import { HeavyNote } from '../replay/heavy-note.tsx';
import head from '../replay/replay-head.module.css';
import screen from '../replay/replay-screen.module.css';
import { useFeed } from '../shell/feed-context.ts';
import { LoadedView } from '../shell/loaded-view.tsx';
import { ProblemNote } from '../shell/problem-note.tsx';
import { selectDays, useHistory } from '../store/history-store.ts';
import { selectSiteName } from '../store/live-selectors.ts';
import { useLive } from '../store/live-store.ts';
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
  const site = useLive(selectSiteName);
  const feed = useFeed();
  useDays(site);
  const days = useHistory(selectDays(site ?? ''));
  if (site === null) return null;
  return (
    <div className={screen['replay']}>
      <div className={head['words']}>
        <h1 className={head['title']}>{text.title}</h1>
        <p>{text.lead}</p>
      </div>
      <LoadedView loaded={days} onAgain={() => void feed.loadDays(site)}>
        {(list) =>
          list.length === 0 ? (
            <ProblemNote problem={{ severity: 'note', text: en.days.nothing, tip: en.days.nothingTip }} />
          ) : (
            <Check key={site} site={site} days={list} />
          )
        }
      </LoadedView>
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
