import { Outcome } from '../shell/outcome.tsx';
import { useSentence } from '../shell/use-formats.ts';
import { selectSiteMessage, selectSnapshot } from '../store/live-selectors.ts';
import { type LiveState, useLive } from '../store/live-store.ts';
import { selectSent, useSettings } from '../store/settings-store.ts';
import { changeState, changeText } from './change-state.ts';

const selectStepping = (state: LiveState): number | undefined => selectSnapshot(state)?.settingsRevision;

/** What came of the last change, until the loop steps by it; the region is there before it. */
export function ChangeOutcome({ site }: { readonly site: string }) {
  const sent = useSettings(selectSent(site));
  const inUnits = useSentence();
  const message = useLive(selectSiteMessage);
  const steppingRevision = useLive(selectStepping);
  const told = message === null ? undefined : { ...message, steppingRevision };
  const state = changeState(sent, told);
  const bad = state === 'refused' || state === 'unanswered';
  return (
    <Outcome good={!bad} state={state}>
      {inUnits(changeText(sent, state, told))}
    </Outcome>
  );
}
