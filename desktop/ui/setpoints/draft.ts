import { type SettingName, type Settings, settingNames } from '../../../shared-types/settings.ts';

/** What a person makes of one setpoint: the text while it is no number, else the number in the table's unit. */
export interface Edit {
  readonly text: string;
  readonly value: number | null;
}

/** Changes that were not sent yet, and the settings from which they started. */
export interface Draft {
  readonly base: Settings;
  readonly edits: Readonly<Partial<Record<SettingName, Edit>>>;
}

export const newDraft = (base: Settings): Draft => ({ base, edits: {} });

/** Takes what was typed; a value that is the one it started from is no change. */
export function withEdit(draft: Draft, name: SettingName, edit: Edit): Draft {
  if (edit.value === draft.base[name]) return withoutEdit(draft, name);
  return { ...draft, edits: { ...draft.edits, [name]: edit } };
}

export function withoutEdit({ base, edits }: Draft, name: SettingName): Draft {
  const { [name]: _dropped, ...others } = edits;
  return { base, edits: others };
}

/** Puts values in, such as those before a change that is to be undone. */
export function withValues(draft: Draft, values: Readonly<Partial<Settings>>): Draft {
  return settingNames.reduce((made, name) => {
    const value = values[name];
    return value === undefined ? made : withEdit(made, name, { text: String(value), value });
  }, draft);
}

/** Names of the setpoints that were changed, in the order of the table. */
export const editedNames = ({ edits }: Draft): readonly SettingName[] =>
  settingNames.filter((name) => edits[name] !== undefined);

/** The whole set as it would be; a text that is no number leaves its setpoint as it was. */
export function draftSettings({ base, edits }: Draft): Settings {
  const made = { ...base };
  for (const name of settingNames) made[name] = edits[name]?.value ?? base[name];
  return made;
}

/** What is sent: the changed setpoints alone, in the table's unit. */
export function patchOf(draft: Draft): Partial<Settings> {
  const made = draftSettings(draft);
  return Object.fromEntries(editedNames(draft).map((name) => [name, made[name]]));
}

/** Setpoints that somebody else has set to another value since the editing began. */
export const changedElsewhere = ({ base, edits }: Draft, inForce: Settings): readonly SettingName[] =>
  settingNames.filter((name) => base[name] !== inForce[name] && edits[name]?.value !== inForce[name]);

/** The draft as it is to be shown: it follows the settings in force as long as nothing stands against that. */
export function currentDraft(draft: Draft | undefined, inForce: Settings): Draft {
  if (draft === undefined || editedNames(draft).length === 0) return newDraft(inForce);
  return changedElsewhere(draft, inForce).length === 0 ? keepMine(draft, inForce) : draft;
}

/** The same changes on the settings that are now in force; those that have become true are none any more. */
export function keepMine({ edits }: Draft, inForce: Settings): Draft {
  return settingNames.reduce((made, name) => {
    const edit = edits[name];
    return edit === undefined ? made : withEdit(made, name, edit);
  }, newDraft(inForce));
}

/** The changes but for those of setpoints that somebody else has changed. */
export function takeTheirs(draft: Draft, inForce: Settings): Draft {
  const theirs = changedElsewhere(draft, inForce);
  return keepMine(theirs.reduce(withoutEdit, draft), inForce);
}
