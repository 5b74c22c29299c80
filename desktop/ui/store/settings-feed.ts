import type { Settings } from '../../../shared-types/settings.ts';
import type { Door } from '../door.ts';
import { createJobSlot } from './job-slot.ts';
import { loadInto } from './loaded.ts';
import { answerOf } from './request-store.ts';
import { type SentChange, selectChanges, useSettings } from './settings-store.ts';

/** Questions about settings and changes of them; each answer lands in the store of settings. */
export interface SettingsFeed {
  /** @param revision - The one in force when the change was made up. */
  changeSettings(site: string, patch: Partial<Settings>, revision: number): Promise<void>;
  whatIf(site: string, day: string, settings: Settings): Promise<void>;
  cancelWhatIf(): void;
  askRemarks(site: string, settings: Settings): Promise<void>;
  loadChanges(site: string): Promise<void>;
}

/** Changes that the history looks back on. */
const mostChanges = 200;

export function createSettingsFeed(door: Door): SettingsFeed {
  const slot = createJobSlot(door, 'whatIf');
  return {
    changeSettings: (site, patch, revision) => change(door, site, patch, revision),
    whatIf: (site, day, settings) =>
      slot.run({ site, day, settings }, (outcome) =>
        useSettings.setState({ whatIf: { site, day, settings, outcome } }),
      ),
    cancelWhatIf() {
      slot.cancel();
      useSettings.setState({ whatIf: null });
    },
    async askRemarks(site, settings) {
      const reply = await door.call('settingsRemarks', { site, settings });
      useSettings.setState({ remarks: reply.ok ? { settings, list: reply.result } : null });
    },
    loadChanges: (site) => loadChanges(door, site),
  };
}

async function change(door: Door, site: string, patch: Partial<Settings>, revision: number): Promise<void> {
  const put = (outcome: SentChange['outcome']) =>
    useSettings.setState({ sent: { site, patch, revision, outcome } });
  put({ state: 'asking' });
  const reply = await door.call('request', {
    site,
    operation: { kind: 'change-settings', settings: patch },
  });
  put(answerOf(reply));
}

const loadChanges = (door: Door, site: string): Promise<void> =>
  loadInto(
    selectChanges(site)(useSettings.getState()),
    (entry) => useSettings.setState(({ changes }) => ({ changes: { ...changes, [site]: entry } })),
    door.call('events', { site, limit: mostChanges, kinds: ['settings-changed'] }),
  );
