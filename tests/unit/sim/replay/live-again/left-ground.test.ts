import { describe, expect, test } from 'vitest';
import { safeOutputs } from '../../../../../controller/engine/index.ts';
import type { DayCurves } from '../../../../../shared-types/log.ts';
import { defaultSettings } from '../../../../../shared-types/settings.ts';
import { createMinutes } from '../../../../../sim/identify/world/minutes.ts';
import type { LoggedSpan } from '../../../../../sim/identify/world/span.ts';
import { leftGroundOf } from '../../../../../sim/replay/live-again/left-ground.ts';
import { logRecord } from '../../../../support/log-records.ts';
import { demoContent, siteOf } from '../../../../support/sites.ts';

const minuteMs = 60_000;
const count = 60;

/** An hour in which the sheet was at 20 to 40 °C, and water circulated at full speed from minute 20 on. */
function loggedSpan(): LoggedSpan {
  const taker = createMinutes(0, count);
  for (let i = 0; i < count; i++) taker.read((i + 1) * minuteMs, 'panSheetC', i % 2 === 0 ? 20 : 40);
  taker.drive(0, 20 * minuteMs, safeOutputs);
  taker.drive(20 * minuteMs, count * minuteMs, { ...safeOutputs, pumpFraction: 1, drainOpen: false });
  return {
    day: '2031-06-21',
    site: siteOf(demoContent()),
    settings: [{ fromMs: 0, settings: defaultSettings }],
    dayFromMs: 0,
    dayToMs: count * minuteMs,
    minutes: taker.minutes(),
    phases: [
      { fromMs: 0, phase: 'empty' },
      { fromMs: 20 * minuteMs, phase: 'circulating' },
    ],
    requests: [],
    first: logRecord(1),
    coveredFraction: 1,
    remarks: [],
  };
}

function curves(sheetC: (minute: number) => number, speed = 1, wetFrom = 20): DayCurves {
  const atMs = Array.from({ length: count }, (_, i) => (i + 1) * minuteMs);
  const reason = 'circulating-for-heat';
  return {
    day: '2031-06-21',
    atMs,
    series: { panSheetC: atMs.map((_, i) => sheetC(i)) },
    pumpFraction: atMs.map((_, i) => (i >= 20 ? speed : 0)),
    heatTodayJ: [],
    phases: [
      { phase: 'empty', reason: 'emptied', fromMs: 0, toMs: wetFrom * minuteMs },
      { phase: 'circulating', reason, fromMs: wetFrom * minuteMs, toMs: count * minuteMs },
    ],
    events: [],
  };
}

describe('the ground of a log', () => {
  test('is not left within what it shows and two kelvins around it', () => {
    expect(
      leftGroundOf(
        loggedSpan(),
        curves((i) => (i < 30 ? 42 : 18)),
      ),
    ).toEqual([]);
  });

  test('is left by a hotter and by a colder sheet, with the time of it', () => {
    const left = leftGroundOf(
      loggedSpan(),
      curves((i) => (i < 15 ? 17.9 : i < 30 ? 42.1 : 30)),
    );
    expect(left).toEqual([
      { fromMs: minuteMs, toMs: 15 * minuteMs, text: 'Sheet: colder than the log ever shows (20 °C).' },
      { fromMs: 16 * minuteMs, toMs: 30 * minuteMs, text: 'Sheet: hotter than the log ever shows (40 °C).' },
    ]);
  });

  test('is not left by what lasts less than ten minutes', () => {
    expect(
      leftGroundOf(
        loggedSpan(),
        curves((i) => (i < 10 ? 60 : 30)),
      ),
    ).toEqual([]);
    expect(
      leftGroundOf(
        loggedSpan(),
        curves((i) => (i < 11 ? 60 : 30)),
      ),
    ).toHaveLength(1);
  });

  test('is left by a speed of the pump that it does not have', () => {
    expect(
      leftGroundOf(
        loggedSpan(),
        curves(() => 30, 0.96),
      ),
    ).toEqual([]);
    expect(
      leftGroundOf(
        loggedSpan(),
        curves(() => 30, 0.94),
      ),
    ).toEqual([expect.objectContaining({ text: 'The pump runs at a speed that the log does not have.' })]);
  });

  test('is left by water in a pan that was empty then', () => {
    expect(
      leftGroundOf(
        loggedSpan(),
        curves(() => 30, 1, 5),
      ),
    ).toEqual([
      {
        fromMs: 5 * minuteMs,
        toMs: 19 * minuteMs,
        text: 'The pan holds water while the logged one was empty.',
      },
    ]);
  });
});
