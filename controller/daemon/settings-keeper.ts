import type { Answer } from '../../shared-types/engine.ts';
import type { RequestMessage } from '../../shared-types/messages.ts';
import type { Settings, SettingsPatch } from '../../shared-types/settings.ts';
import { changedValues } from '../../shared-types/settings-event.ts';
import type { Remark } from '../engine/index.ts';
import type { LogWriter } from '../log/log.ts';
import { changeSettings } from './change-settings.ts';

/** The settings in force. A change holds from the next step on and is kept in the log. */
export interface SettingsKeeper {
  readonly settings: Settings;
  readonly revision: number;
  /**
   * Changes some settings, or none with every reason. @returns the answer to who asked, with what is to be known of
   * settings that are allowed and yet have a drawback.
   */
  change(message: RequestMessage, patch: SettingsPatch, nowMs: number): Answer;
}

export function createSettingsKeeper(
  log: LogWriter,
  first: { readonly settings: Settings; readonly revision: number },
  onChanged: () => void,
  remarksOn: (settings: Settings) => readonly Pick<Remark, 'text'>[] = () => [],
): SettingsKeeper {
  let { settings, revision } = first;
  return {
    get settings() {
      return settings;
    },
    get revision() {
      return revision;
    },
    change(message, patch, nowMs) {
      const change = changeSettings(settings, patch);
      const answer = (accepted: boolean, code: Answer['code'], text: string) => ({
        id: message.id,
        accepted,
        code,
        text,
      });
      if (change.kind === 'refused') return answer(false, 'settings-refused', change.text);
      if (change.kind === 'same')
        return answer(false, 'nothing-to-do', 'These settings are in force already.');
      const known = new Set(remarksOn(settings).map(({ text }) => text));
      const remarks = remarksOn(change.settings).map(({ text }) => text);
      const news = remarks.filter((text) => !known.has(text)).map((text) => ` ${text}`);
      const values = changedValues(settings, change.settings, change.names);
      settings = change.settings;
      revision = log.keepSettings(settings, nowMs);
      const text = `${message.who} changed ${change.text}.`;
      log.event({
        atMs: nowMs,
        kind: 'settings-changed',
        text,
        values: { ...values, who: message.who, revision },
      });
      onChanged();
      return answer(true, 'accepted', `Changed ${change.text}.${news.join('')}`);
    },
  };
}
