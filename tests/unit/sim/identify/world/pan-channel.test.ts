import { describe, expect, test } from 'vitest';
import type { RawReadings } from '../../../../../shared-types/readings.ts';
import { assumedAirC } from '../../../../../sim/identify/world/assumed-air.ts';
import { beginOf } from '../../../../../sim/identify/world/begin.ts';
import { panChannel } from '../../../../../sim/identify/world/pan-channel.ts';
import { minutely, spanOf } from './span-rig.ts';

interface Read {
  readonly sheet?: number;
  readonly outlet?: number;
}

/** The day before and the day, whose minutes begin at 0; each thermometer is read before some minute of it. */
const readUntil = ({ sheet = -1440, outlet = -1440 }: Read) =>
  spanOf(
    minutely(-1440, 1440, (minute) => {
      const readings: RawReadings = {};
      if (minute < sheet) readings.panSheetC = { value: 80, ageMs: 0 };
      if (minute < outlet) readings.panOutletC = { value: 20, ageMs: 0 };
      return { input: { readings }, outcome: { phase: 'resting' } };
    }),
  );

describe('the thermometer that tells the pan', () => {
  test.each<[string, Read, string | undefined]>([
    ["the sheet's, where both were read", { sheet: 1440, outlet: 1440 }, 'panSheetC'],
    ["the sheet's from half of the day on", { sheet: 720, outlet: 1440 }, 'panSheetC'],
    ["the outlet's, where the sheet's was read in less", { sheet: 719, outlet: 1440 }, 'panOutletC'],
    ["the outlet's, where the sheet's died the day before", { sheet: 0, outlet: 1440 }, 'panOutletC'],
    ['the one that was read more, where both were read in little', { sheet: 200, outlet: 300 }, 'panOutletC'],
    ["the sheet's, where it alone was read at all", { sheet: -60 }, 'panSheetC'],
    ['none, where none was read', {}, undefined],
  ])('is %s', (_which, read, channel) => {
    expect(panChannel(readUntil(read))).toBe(channel);
  });

  test('is the same for the air by night and for how the loop begins', () => {
    const span = readUntil({ sheet: 0, outlet: 1440 });
    const airC = assumedAirC(span);
    expect(Math.max(...airC)).toBeLessThan(40);
    const { pan } = beginOf(span, {}, { fromMs: 0, stepMs: 1, wantedKgS: [] });
    expect(pan.core.waterC[0]).toBe(20);
  });
});
