import { describe, expect, test } from 'vitest';
import { pastChanges, undoOf } from '../../../desktop/ui/setpoints/change-history.ts';
import { changeState, changeText } from '../../../desktop/ui/setpoints/change-state.ts';
import type { SentChange } from '../../../desktop/ui/store/settings-store.ts';
import type { Answer } from '../../../shared-types/engine.ts';
import type { LogEvent } from '../../../shared-types/log.ts';
import { defaultSettings } from '../../../shared-types/settings.ts';
import { changedValues } from '../../../shared-types/settings-event.ts';

const answer: Answer = { id: 'request-1', accepted: true, code: 'accepted', text: 'Changed it.' };
const sent = (outcome: SentChange['outcome']): SentChange => ({
  site: 'test-loop',
  patch: { startDifferenceK: 2.5 },
  revision: 4,
  outcome,
});
const accepted = sent({ state: 'answered', answer });
const before = { settings: defaultSettings, settingsRevision: 4, steppingRevision: 4 };
const after = {
  settings: { ...defaultSettings, startDifferenceK: 2.5 },
  settingsRevision: 5,
  steppingRevision: 5,
};

describe('a change that was sent', () => {
  test('is not there before the first', () => {
    expect(changeState(null, before)).toBe('none');
    expect(changeText(null, 'none', before)).toBe('');
  });

  test('waits for its answer', () => {
    expect(changeState(sent({ state: 'asking' }), before)).toBe('asking');
  });

  test('is confirmed only once the loop steps by it', () => {
    expect(changeState(accepted, before)).toBe('accepted');
    expect(changeState(accepted, undefined)).toBe('accepted');
    expect(changeState(accepted, { ...after, steppingRevision: 4 })).toBe('accepted');
    expect(changeState(accepted, { ...after, steppingRevision: undefined })).toBe('accepted');
    expect(changeState(accepted, after)).toBe('confirmed');
    expect(changeText(accepted, 'confirmed', after)).toBe('In force as settings 5. Changed it.');
  });

  test('is not confirmed by settings of somebody else, which it says', () => {
    const others = { ...after, settings: defaultSettings };
    expect(changeState(accepted, others)).toBe('overtaken');
    expect(changeText(accepted, 'overtaken', others)).toBe(
      'Accepted. Changed it. Other values are in force since, as settings 5.',
    );
    expect(changeState(sent({ state: 'asking' }), others)).toBe('asking');
    expect(changeState(accepted, { ...after, settingsRevision: 4, steppingRevision: 4 })).toBe('accepted');
  });

  test('says why it was refused, even when another change has brought the same values', () => {
    const text = 'The stop difference is at least 0.5 K below the start difference.';
    const refused = sent({
      state: 'answered',
      answer: { ...answer, accepted: false, code: 'settings-refused', text },
    });
    expect(changeState(refused, after)).toBe('refused');
    expect(changeText(refused, 'refused', before)).toBe(`Refused, nothing was changed. ${text}`);
  });

  test('whose answer was lost says so, and is made good by the loop stepping by it', () => {
    const lost = sent({
      state: 'unanswered',
      problem: { severity: 'error', text: 'Nobody answered.', tip: 'Look at the loop.' },
    });
    expect(changeState(lost, before)).toBe('unanswered');
    expect(changeText(lost, 'unanswered', before)).toBe('No answer. Nobody answered. Look at the loop.');
    expect(changeState(lost, after)).toBe('confirmed');
    expect(changeText(lost, 'confirmed', after)).toBe('In force as settings 5.');
  });
});

const event = (values: LogEvent['values'], kind: LogEvent['kind'] = 'settings-changed'): LogEvent => ({
  atMs: 1000,
  kind,
  text: '',
  values,
});

describe('the history of changes', () => {
  const values = changedValues(defaultSettings, after.settings, ['startDifferenceK']);
  const [change] = pastChanges([event({ ...values, who: 'a monitor', revision: 5 })]);

  test('tells who changed what from which value, and when', () => {
    expect(change).toEqual({
      atMs: 1000,
      who: 'a monitor',
      revision: 5,
      changes: [{ name: 'startDifferenceK', before: 1, after: 2.5 }],
    });
  });

  test('leaves other events and unknown setpoints out', () => {
    expect(pastChanges([event({ startDifferenceK: 3 }, 'request-answered')])).toEqual([]);
    expect(pastChanges([event({ formerSettingK: 3, who: 'a monitor' })])).toEqual([]);
    expect(pastChanges([event({ startDifferenceK: 'hot' })])).toEqual([]);
  });

  test('of an older log knows no values from before, and cannot undo', () => {
    const [old] = pastChanges([event({ startDifferenceK: 3 })]);
    expect(old).toMatchObject({
      who: 'unknown',
      revision: null,
      changes: [{ name: 'startDifferenceK', before: null, after: 3 }],
    });
    expect(old && undoOf(old, defaultSettings)).toEqual({ kind: 'unknown' });
  });

  test('offers the values from before as long as they are not in force', () => {
    expect(change && undoOf(change, after.settings)).toEqual({
      kind: 'possible',
      values: { startDifferenceK: 1 },
    });
    expect(change && undoOf(change, defaultSettings)).toEqual({ kind: 'done' });
  });
});
