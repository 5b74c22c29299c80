import { describe, expect, it } from 'vitest';
import { createSettingsKeeper } from '../../../../controller/daemon/settings-keeper.ts';
import type { LogWriter } from '../../../../controller/log/log.ts';
import type { LogEvent } from '../../../../shared-types/log.ts';
import type { RequestMessage } from '../../../../shared-types/messages.ts';
import { defaultSettings, type Settings } from '../../../../shared-types/settings.ts';

const message = { id: 'change-0001', who: 'a test' } as RequestMessage;

/** A keeper whose remark is due below 3 K, and one that is always due. */
function keeper(events: LogEvent[] = []) {
  let revision = 1;
  const log = {
    keepSettings: () => ++revision,
    event: (event: LogEvent) => events.push(event),
  } as unknown as LogWriter;
  const remarksOn = ({ startDifferenceK }: Settings) => [
    { text: 'This is always so.' },
    ...(startDifferenceK < 3 ? [{ text: 'It may cycle.' }] : []),
  ];
  const first = { settings: { ...defaultSettings, startDifferenceK: 3, fillDifferenceK: 4 }, revision };
  return createSettingsKeeper(log, first, () => undefined, remarksOn);
}

describe('the answer to a change of settings', () => {
  it('says what is new to be known of them, and not what was so before', () => {
    const own = keeper();
    expect(own.change(message, { startDifferenceK: 2 }, 0).text).toBe(
      'Changed start difference from 3 to 2 K. It may cycle.',
    );
    expect(own.change(message, { startDifferenceK: 2.5 }, 0).text).toBe(
      'Changed start difference from 2 to 2.5 K.',
    );
    expect(own.revision).toBe(3);
  });
});

describe('the log of a change of settings', () => {
  it('tells who changed what, when, and the values before and after', () => {
    const events: LogEvent[] = [];
    const own = keeper(events);
    own.change(message, { startDifferenceK: 2, stopDelayS: 600 }, 7000);
    expect(events).toEqual([
      {
        atMs: 7000,
        kind: 'settings-changed',
        text: `a test changed start difference from 3 to 2 K, stop delay from ${defaultSettings.stopDelayS} to 600 s.`,
        values: {
          startDifferenceK: 2,
          'before.startDifferenceK': 3,
          stopDelayS: 600,
          'before.stopDelayS': defaultSettings.stopDelayS,
          who: 'a test',
          revision: 2,
        },
      },
    ]);
  });

  it('has no entry for a change that was refused', () => {
    const events: LogEvent[] = [];
    const own = keeper(events);
    expect(own.change(message, { startDifferenceK: 0 }, 0).accepted).toBe(false);
    expect(own.change(message, { startDifferenceK: 3 }, 0).code).toBe('nothing-to-do');
    expect(events).toEqual([]);
  });
});
