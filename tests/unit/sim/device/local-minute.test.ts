import { describe, expect, it } from 'vitest';
import { nextLocalMinuteMs } from '../../../../sim/device/local-minute.ts';

describe('next local minute', () => {
  const noonMs = Date.UTC(2031, 5, 21, 12, 0, 30);
  const minute = (hours: number, minutes: number) => hours * 60 + minutes;
  const rows = [
    ['later today', minute(13, 45), 'Etc/UTC', Date.UTC(2031, 5, 21, 13, 45)],
    ['tomorrow when it is past', minute(3, 0), 'Etc/UTC', Date.UTC(2031, 5, 22, 3)],
    ['the minute that runs', minute(12, 0), 'Etc/UTC', Date.UTC(2031, 5, 21, 12)],
    ['by the clocks of the zone', minute(13, 0), 'Asia/Kolkata', Date.UTC(2031, 5, 22, 7, 30)],
    ['in summer time', minute(18, 0), 'Atlantic/Azores', Date.UTC(2031, 5, 21, 18)],
  ] as const;
  it.each(rows)('%s', (_, minuteOfDay, zone, expectedMs) => {
    expect(nextLocalMinuteMs(noonMs, minuteOfDay, zone)).toBe(expectedMs);
  });
});
