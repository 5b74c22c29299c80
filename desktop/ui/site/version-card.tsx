import { version } from '../../../package.json';
import { Card } from '../shell/card.tsx';
import { useNumbers } from '../shell/use-formats.ts';
import { selectSiteName, selectSnapshot } from '../store/live-selectors.ts';
import { type LiveState, useLive } from '../store/live-store.ts';
import { own } from '../store/own.ts';
import { en } from '../text/en.ts';
import { type Fact, FactList } from './fact-list.tsx';

const text = en.site.versions;

const selectEngine = (state: LiveState) => selectSnapshot(state)?.engineVersion ?? en.site.unknown;
const selectSchema = (state: LiveState) => selectSnapshot(state)?.schema ?? 0;
const selectRun = (state: LiveState) => selectSnapshot(state)?.run ?? 0;
const selectStep = (state: LiveState) => selectSnapshot(state)?.sequence ?? 0;
const selectSettingsRevision = (state: LiveState) => selectSnapshot(state)?.settingsRevision ?? 0;
const selectMessage = (state: LiveState) => {
  const name = selectSiteName(state);
  return name === null ? null : (own(state.sites, name)?.live.site ?? null);
};

/** Which logic runs, on which revision of what it was given. */
export function VersionCard() {
  const numbers = useNumbers();
  const message = useLive(selectMessage);
  const facts: readonly Fact[] = [
    [text.engine, useLive(selectEngine)],
    [text.screens, version],
    [text.schema, numbers.count(useLive(selectSchema))],
    [text.siteSchema, numbers.count(message?.site.schema ?? 0)],
    [text.siteRevision, numbers.count(message?.siteRevision ?? 0)],
    [text.settingsRevision, numbers.count(useLive(selectSettingsRevision))],
    [text.run, numbers.count(useLive(selectRun))],
    [text.step, numbers.count(useLive(selectStep))],
  ];
  return (
    <Card heading={text.heading}>
      <FactList facts={facts} />
    </Card>
  );
}
