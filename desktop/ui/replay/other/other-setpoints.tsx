import type { DaySummary } from '../../../../shared-types/log.ts';
import { draftSettings, editedNames } from '../../setpoints/draft.ts';
import { useFormPart } from '../../setpoints/use-form-part.ts';
import { selectComparison, useTuning } from '../../store/tuning-store.ts';
import { FitCard } from '../fit/fit-card.tsx';
import { useOlderFit } from '../fit/use-older-fit.ts';
import { HeavyNote } from '../heavy-note.tsx';
import { DaySelect, ReplayHead } from '../replay-head.tsx';
import { ComparisonView } from './comparison-view.tsx';
import { TrialCard } from './trial-card.tsx';

interface Props {
  readonly site: string;
  readonly asked: string | null;
  readonly day: string;
  readonly days: readonly DaySummary[];
}

/** What a logged day would have brought under other setpoints. */
export function OtherSetpoints({ site, asked, day, days }: Props) {
  const part = useFormPart(site);
  const run = useTuning(selectComparison(site));
  const result = run?.outcome.state === 'ready' ? run.outcome.result : undefined;
  const olderFit = useOlderFit(site, run);
  const settings = draftSettings(part.draft);
  const old = run !== null && (run.day !== day || JSON.stringify(run.settings) !== JSON.stringify(settings));
  return (
    <>
      <ReplayHead part="other" asked={asked}>
        <DaySelect part="other" day={day} days={days} />
      </ReplayHead>
      <HeavyNote site={site} />
      <TrialCard part={part} heard={part.heard} day={day} run={run} />
      {result === undefined ? null : (
        <ComparisonView
          site={site}
          comparison={result}
          old={old}
          olderFit={olderFit}
          inForce={editedNames(part.draft).length === 0}
        />
      )}
      <FitCard site={site} days={days} />
    </>
  );
}
