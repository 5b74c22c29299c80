import { Card } from '../../shell/card.tsx';
import { OutcomeNote } from '../../shell/outcome-note.tsx';
import { selectDecision } from '../../store/live-selectors.ts';
import { type LiveState, useLive } from '../../store/live-store.ts';
import { en } from '../../text/en.ts';
import { isUnderWay } from './commissioning-view.ts';
import { EarlierRuns } from './earlier-runs.tsx';
import { Findings } from './findings.tsx';
import { RunUnderWay } from './run-under-way.tsx';
import { StartRun } from './start-run.tsx';

const text = en.commissioning;

const selectRun = (state: LiveState) => selectDecision(state)?.commissioning ?? null;
const askedHere = ['commission', 'confirm', 'automatic'] as const;

/** The guided run: what it does, how it goes, what it found, and when the last ones were. */
export function CommissioningCard({ site }: { readonly site: string }) {
  const run = useLive(selectRun);
  return (
    <Card heading={text.heading}>
      <OutcomeNote
        kinds={askedHere}
        nameOf={({ kind }) => (kind in text.asked ? text.asked[kind as keyof typeof text.asked] : kind)}
      />
      {run !== null && isUnderWay(run) ? (
        <RunUnderWay site={site} run={run} />
      ) : (
        <>
          <StartRun site={site} />
          {run === null ? null : <Findings lead={run.text} findings={run.findings} />}
        </>
      )}
      <EarlierRuns site={site} known={run !== null} />
    </Card>
  );
}
