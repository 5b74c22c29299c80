import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chooseAnchor, comingUpMs, historyStartMs } from '../../../desktop/start/calendar.ts';

const hourMs = 3_600_000;
const dayMs = 24 * hourMs;
const question = { newestMs: null, fromMs: undefined, firstMs: 9e9, stepMs: 5000, wallMs: 77, speed: 60 };

describe('chooseAnchor', () => {
  it('begins on the first instant, or where it was told', () => {
    expect(chooseAnchor(question)).toEqual({
      ok: true,
      anchor: { showsMs: 9e9, atWallMs: 77, speed: 60 },
    });
    expect(chooseAnchor({ ...question, fromMs: 5 })).toMatchObject({ anchor: { showsMs: 5 } });
  });

  it('goes on one step after the newest record', () => {
    expect(chooseAnchor({ ...question, newestMs: 1_000_000 })).toMatchObject({
      anchor: { showsMs: 1_005_000 },
    });
    expect(chooseAnchor({ ...question, newestMs: 1_000_000, fromMs: 2_000_000 })).toMatchObject({
      anchor: { showsMs: 2_000_000 },
    });
  });

  it('never goes back behind the log', () => {
    expect(chooseAnchor({ ...question, newestMs: 1_000_000, fromMs: 1_004_999 })).toEqual({
      ok: false,
      reason: expect.stringContaining('1970-01-01T00:16:45.000Z'),
    });
  });
});

describe('historyStartMs', () => {
  it.each([
    ['Etc/UTC', '2031-06-21T08:30:00Z', '2031-06-18T00:00:00Z'],
    ['Asia/Kathmandu', '2031-06-21T08:30:00Z', '2031-06-17T18:15:00Z'],
    ['Pacific/Honolulu', '2031-06-21T08:30:00Z', '2031-06-17T10:00:00Z'],
    // An hour ahead of standard time, as the Azores are in summer.
    ['Atlantic/Azores', '2031-06-21T08:30:00Z', '2031-06-18T00:00:00Z'],
    ['Atlantic/Azores', '2031-12-21T08:30:00Z', '2031-12-18T01:00:00Z'],
  ])('is a midnight of %s three days before %s', (zone, instant, start) => {
    expect(new Date(historyStartMs(Date.parse(instant), zone)).toISOString()).toBe(
      new Date(start).toISOString(),
    );
  });

  it('lies three to four days back', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 3650 * 24 * 60 }), (minutes) => {
        const backMs = minutes * 60_000 - historyStartMs(minutes * 60_000, 'Asia/Tokyo');
        expect(backMs).toBeGreaterThanOrEqual(3 * dayMs);
        expect(backMs).toBeLessThan(4 * dayMs);
      }),
    );
  });
});

it.each([
  [100, 3000],
  [600, 3000],
  [601, 3005],
  [601.3, 3007],
  [4000, 20_000],
  [4001, 20_000],
])('a start that loads in %d ms gives controller and device %d ms', (loadedMs, graceMs) => {
  expect(comingUpMs(loadedMs)).toBe(graceMs);
});
