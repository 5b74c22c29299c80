import { describe, expect, it } from 'vitest';
import { isDaylight, isSunDown } from '../../../controller/engine/daylight.ts';
import { type Given, situationOf } from './situations.ts';

const jumped = (value: number) => ({ quality: 'doubtful', value, ageMs: 0, cause: 'jumped' }) as const;
const failed = { quality: 'failed', cause: 'stale' } as const;
/** A dry sheet in the sun. */
const lit: Given = { level: 'empty', told: { panSheetC: 20, ambientC: 15 } };
const dark: Given = { sunHeightDeg: null, told: { irradianceWM2: 5 } };

function both(given: Given): [boolean, boolean] {
  const situation = situationOf(given);
  return [isSunDown(situation), isDaylight(situation)];
}

describe('day and night', () => {
  it.each<[string, Given, boolean, boolean]>([
    ['by the calendar, below the horizon', { sunHeightDeg: -0.1 }, true, false],
    ['by the calendar, at the horizon', { sunHeightDeg: 0 }, false, true],
    ['by the calendar, against a warm sheet', { ...lit, sunHeightDeg: -0.1 }, true, false],
    [
      'by the calendar, against a lit sensor',
      { sunHeightDeg: -0.1, told: { irradianceWM2: 900 } },
      true,
      false,
    ],
    ['by a dark sensor, against the calendar', { told: { irradianceWM2: 5 } }, true, false],
    ['by a dark sensor in doubt', { told: { irradianceWM2: jumped(5) } }, true, false],
    ['by a sensor that is hardly lit', { told: { irradianceWM2: 5.1 } }, false, true],
    ['by the calendar, where the sensor has failed', { told: { irradianceWM2: failed } }, false, true],
    [
      'by a lit sensor, without a calendar',
      { sunHeightDeg: null, told: { irradianceWM2: 5.1 } },
      false,
      true,
    ],
    ['by a dark sensor, without a calendar', dark, true, false],
    // A lit sensor in doubt proves no day, yet something tells: it does not count as day.
    ['by a lit sensor in doubt', { sunHeightDeg: null, told: { irradianceWM2: jumped(900) } }, true, false],
    // Nothing tells: protections count on night, what waits for the day does not wait.
    ['by nothing', { sunHeightDeg: null }, true, true],
    ['by a failed sensor', { sunHeightDeg: null, told: { irradianceWM2: failed } }, true, true],
  ])('are told %s: sun down %s, daylight %s', (_by, given, down, day) => {
    expect(both(given)).toEqual([down, day]);
  });

  it.each<[string, Given, boolean]>([
    ['5 K above the air', {}, false],
    ['less above the air', { told: { panSheetC: 19.9, ambientC: 15 } }, true],
    ['above an air that is not known', { told: { panSheetC: 5 } }, false],
    ['hardly above such an air', { told: { panSheetC: 4.9 } }, true],
    ['above air in doubt', { told: { panSheetC: 5, ambientC: jumped(15) } }, false],
    ['on water', { level: 'part' }, true],
    ['not known', { told: { ambientC: 15 } }, true],
    ['in doubt', { told: { panSheetC: jumped(40), ambientC: 15 } }, true],
    ['by one of its sensors only', { told: { panSheetC: 40, panOutletC: 19.9, ambientC: 15 } }, true],
  ])('are told by a dry sheet that is %s, without a calendar: sun down %s', (_what, given, down) => {
    expect(isSunDown(situationOf({ ...lit, sunHeightDeg: null, ...given }))).toBe(down);
  });

  it('are told by a warm dry sheet against a dark sensor', () => {
    const given = { ...lit, told: { ...lit.told, irradianceWM2: 0 } };
    expect(both(given)).toEqual([false, true]);
  });
});
