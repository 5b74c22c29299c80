import { Card } from '../shell/card.tsx';
import { useNumbers } from '../shell/use-formats.ts';
import { selectDecision } from '../store/live-selectors.ts';
import { type LiveState, useLive } from '../store/live-store.ts';
import { en } from '../text/en.ts';
import { FactList } from './fact-list.tsx';
import { learntRows } from './learnt-rows.ts';

const text = en.site.learnt;

const nothing: Readonly<Record<string, number>> = {};
const selectLearnt = (state: LiveState) => selectDecision(state)?.learnt ?? nothing;

/** What the control logic has measured of this loop. */
export function LearntCard() {
  const rows = learntRows(useLive(selectLearnt), useNumbers());
  return (
    <Card heading={text.heading}>
      <p>{rows.length === 0 ? text.nothing : text.lead}</p>
      <FactList facts={rows} />
    </Card>
  );
}
