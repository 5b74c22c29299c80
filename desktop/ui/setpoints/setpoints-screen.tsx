import { ProblemNote } from '../shell/problem-note.tsx';
import { selectSiteMessage, selectSiteName } from '../store/live-selectors.ts';
import { useLive } from '../store/live-store.ts';
import { en } from '../text/en.ts';
import { SetpointsForm } from './setpoints-form.tsx';

/** What may be changed, what it means, and what it would have done on a logged day. */
export default function SetpointsScreen() {
  const site = useLive(selectSiteName);
  const message = useLive(selectSiteMessage);
  if (site === null) return null;
  if (message === null) return <ProblemNote problem={{ severity: 'note', text: en.setpoints.nothing }} />;
  return <SetpointsForm key={site} site={site} message={message} />;
}
