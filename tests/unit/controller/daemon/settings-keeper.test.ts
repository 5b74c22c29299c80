import { describe, expect, it } from 'vitest';
import { createSettingsKeeper } from '../../../../controller/daemon/settings-keeper.ts';
import type { LogWriter } from '../../../../controller/log/log.ts';
import type { RequestMessage } from '../../../../shared-types/messages.ts';
import { defaultSettings, type Settings } from '../../../../shared-types/settings.ts';

const message = { id: 'change-0001', who: 'a test' } as RequestMessage;

/** A keeper whose remark is due below 3 K, and one that is always due. */
function keeper() {
  let revision = 1;
  const log = { keepSettings: () => ++revision, event: () => undefined } as unknown as LogWriter;
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
      'Changed startDifferenceK from 3 to 2. It may cycle.',
    );
    expect(own.change(message, { startDifferenceK: 2.5 }, 0).text).toBe(
      'Changed startDifferenceK from 2 to 2.5.',
    );
    expect(own.revision).toBe(3);
  });
});
