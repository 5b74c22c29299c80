import { describe, expect, it } from 'vitest';
import type { Channel } from '../../../shared-types/channels.ts';
import { causeOf, doubtsOf, minutes } from './doubt-rig.ts';
import { Loop, makeSite, type Values } from './rig.ts';

const sensors: readonly Channel[] = ['panOutletC', 'panSheetC', 'storeBottomC', 'ambientC'];
const bench = makeSite('drain-valve', sensors);
const site = {
  ...bench,
  sensors: {
    ...bench.sensors,
    irradianceWM2: { ...bench.sensors.ambientC, unit: 'W/m2' },
    humidityFraction: { ...bench.sensors.ambientC, unit: 'fraction' },
  },
} as typeof bench;

/** The night ends with a dew point of 9.26 °C (20 °C, half saturated); the sun rises at half past six. */
function morning(values: Values, count = 31): Loop {
  const loop = new Loop(site);
  loop.nowMs = Date.UTC(2031, 5, 21, 5);
  loop.set({ panOutletC: 18, panSheetC: 18, ambientC: 20, humidityFraction: 0.5, irradianceWM2: 0 });
  loop.until('empty');
  minutes(loop, 180);
  return minutes(loop.set(values), count);
}

const accused = (loop: Loop) => doubtsOf(loop).filter((text) => text.endsWith('air-in-the-sun'));

describe('air that grows more humid as the sun shines', () => {
  it.each([
    // 28.29 °C, half saturated, has a dew point 7.4 K higher; 27.5 °C one 6.7 K higher.
    [{ ambientC: 28.3, irradianceWM2: 300 }, 1],
    [{ ambientC: 27.5, irradianceWM2: 300 }, 0],
    [{ ambientC: 28.3, irradianceWM2: 299 }, 0],
    // Warmer, and as much drier: no water came.
    [{ ambientC: 35, humidityFraction: 0.2, irradianceWM2: 800 }, 0],
  ])('%o: %d in doubt', (values, count) => {
    expect(accused(morning(values))).toHaveLength(count);
  });

  it('is looked at for half an hour', () => {
    expect(accused(morning({ ambientC: 28.3, irradianceWM2: 800 }, 29))).toEqual([]);
    const loop = morning({ ambientC: 28.3, irradianceWM2: 800 }, 31);
    expect(accused(loop)).toEqual(['ambientC disagrees air-in-the-sun']);
    expect(causeOf(loop.step(), 'ambientC')).toBe('disagrees');
  });

  it('tells nothing without its sensors, nor of a night that nobody saw', () => {
    const broken = { value: null, ageMs: 100, fault: 'open-circuit' } as const;
    const sunny = { ambientC: 28.3, irradianceWM2: 800 };
    expect(accused(morning({ ...sunny, humidityFraction: broken }))).toEqual([]);
    expect(accused(morning({ ...sunny, irradianceWM2: broken }))).toEqual([]);
    expect(accused(morning({ ...sunny, humidityFraction: 0 }))).toEqual([]);
    const loop = morning({}, 1).step(null).set(sunny);
    expect(loop.state.watch.nightDewC).toBeNull();
    expect(accused(minutes(loop, 40))).toEqual([]);
  });
});
