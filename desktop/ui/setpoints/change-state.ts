import type { SettingName, Settings } from '../../../shared-types/settings.ts';
import { assertNever } from '../assert-never.ts';
import type { SentChange } from '../store/settings-store.ts';
import { en } from '../text/en.ts';

/** What came of a change that was sent. */
export type ChangeState =
  | 'none'
  | 'asking'
  | 'accepted'
  | 'confirmed'
  | 'overtaken'
  | 'refused'
  | 'unanswered';

/** Settings in force as the controller tells them, and the revision that its steps go by. */
export interface Told {
  readonly settings: Settings;
  readonly settingsRevision: number;
  /** Of the newest snapshot; undefined before the first. */
  readonly steppingRevision: number | undefined;
}

/**
 * A change is confirmed once the loop steps by settings of another revision than when it was sent, and the
 * controller tells every changed value. An answer that was lost on the way is made good by that as well.
 */
export function changeState(sent: SentChange | null, told: Told | undefined): ChangeState {
  if (sent === null) return 'none';
  const { outcome } = sent;
  if (outcome.state === 'answered' && !outcome.answer.accepted) return 'refused';
  const now = standOf(sent, told);
  if (now === 'in-force') return 'confirmed';
  switch (outcome.state) {
    case 'asking':
      return 'asking';
    case 'answered':
      return now === 'other' ? 'overtaken' : 'accepted';
    case 'unanswered':
      return 'unanswered';
    default:
      return assertNever(outcome);
  }
}

/** Whether the loop steps by the values that were sent, still by those before, or by others of a later change. */
function standOf({ patch, revision }: SentChange, told: Told | undefined): 'before' | 'in-force' | 'other' {
  if (told === undefined || told.settingsRevision === revision) return 'before';
  if (told.steppingRevision !== told.settingsRevision) return 'before';
  const same = (Object.keys(patch) as SettingName[]).every((name) => told.settings[name] === patch[name]);
  return same ? 'in-force' : 'other';
}

/** What came of it in words. */
export function changeText(sent: SentChange | null, state: ChangeState, told: Told | undefined): string {
  const { outcome } = en.setpoints;
  const said = sent?.outcome.state === 'answered' ? sent.outcome.answer.text : '';
  const problem = sent?.outcome.state === 'unanswered' ? sent.outcome.problem : undefined;
  switch (state) {
    case 'none':
      return '';
    case 'asking':
      return outcome.asking;
    case 'accepted':
      return outcome.accepted(said);
    case 'confirmed':
      return outcome.confirmed(said, told?.settingsRevision ?? 0).trim();
    case 'overtaken':
      return outcome.overtaken(said, told?.settingsRevision ?? 0);
    case 'refused':
      return outcome.refused(said);
    case 'unanswered':
      return outcome.unanswered(problem?.text ?? '', problem?.tip ?? '');
    default:
      return assertNever(state);
  }
}
