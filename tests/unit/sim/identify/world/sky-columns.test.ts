import { describe, expect, test } from 'vitest';
import type { RawReadings } from '../../../../../shared-types/readings.ts';
import { conditionsOf, skyColumns, weatherOf } from '../../../../../sim/identify/world/sky-columns.ts';
import { fromMs, minutely, minuteMs, spanOf } from './span-rig.ts';

type Values = Readonly<Record<string, number>>;

/** A day of which each minute shows what is given. */
function skyOf(shown: (minute: number) => Values) {
  const span = spanOf(
    minutely(0, 1440, (minute) => {
      const readings: RawReadings = Object.fromEntries(
        Object.entries(shown(minute)).map(([channel, value]) => [channel, { value, ageMs: 0 }]),
      );
      return { input: { readings } };
    }),
  );
  return skyColumns(span, () => new Float64Array(1440).fill(11));
}

describe('the sky of a logged day', () => {
  test('is dark by night whatever the sensor shows, and has no negative sun', () => {
    const { irradianceWM2, sun } = skyOf((minute) => ({ irradianceWM2: minute % 2 === 0 ? 7 : -7 }));
    const night = sun.zenithDeg.findIndex((zenithDeg) => zenithDeg > 100);
    const noon = sun.zenithDeg.indexOf(Math.min(...sun.zenithDeg));
    expect([irradianceWM2[night], irradianceWM2[night + 1]]).toEqual([0, 0]);
    expect([irradianceWM2[noon], irradianceWM2[noon + 1]].toSorted()).toEqual([0, 7]);
  });

  test('is in a hole as clear as beside it, not as bright', () => {
    const { sun } = skyOf(() => ({}));
    const half = (minute: number) => 0.5 * (sun.spaceWM2[minute] as number);
    const noon = sun.spaceWM2.indexOf(Math.max(...sun.spaceWM2));
    const isHole = (minute: number) => Math.abs(minute - noon) < 90;
    const shown = skyOf((minute) => (isHole(minute) ? {} : { irradianceWM2: half(minute) }));
    expect(shown.origins.irradiance).toBe('measured');
    expect(shown.irradianceWM2[noon]).toBeCloseTo(half(noon), 6);
  });

  test.each([
    ['irradianceWM2', 'irradiance', 'reconstructed'],
    ['ambientC', 'air', 'reconstructed'],
    ['windMs', 'wind', 'assumed'],
    ['longWaveWM2', 'sky', 'assumed'],
  ] as const)(
    'does not count %s as measured that was read in less than half of the day',
    (channel, name, else_) => {
      const readUntil = (end: number) =>
        skyOf((minute): Values => (minute < end ? { [channel]: 3 } : {})).origins[name];
      expect(readUntil(719)).toBe(else_);
      expect(readUntil(720)).toBe('measured');
    },
  );

  test('takes a clear sun and the air that is assumed where nothing was measured', () => {
    const sky = skyOf(() => ({}));
    expect(sky.irradianceWM2).toEqual(sky.sun.clearWM2);
    expect(sky.airC[700]).toBe(11);
    expect(sky.windMs[700]).toBe(2);
  });

  test('holds for the minute up to its instant, and its first and last beyond the ends', () => {
    const weather = weatherOf(conditionsOf(skyOf((minute) => ({ ambientC: minute }))));
    expect(weather.at(fromMs - minuteMs).airC).toBe(0);
    expect(weather.at(fromMs + 10 * minuteMs).airC).toBe(9);
    expect(weather.at(fromMs + 10 * minuteMs + 1).airC).toBe(10);
    expect(weather.at(fromMs + 2000 * minuteMs).airC).toBe(1439);
  });
});
