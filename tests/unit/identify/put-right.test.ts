import { expect, it } from 'vitest';
import { usualLoop } from '../../../sim/identify/possible-loop.ts';
import { putRight } from '../../../sim/identify/world/put-right.ts';
import type { LoggedSpan } from '../../../sim/identify/world/span.ts';

const values = {
  irradianceWM2: Float64Array.of(510, Number.NaN),
  ambientC: Float64Array.of(20.5, 21.5),
  windMs: Float64Array.of(3, 4),
};
const span = { day: '2031-06-21', minutes: { count: 2, values } } as unknown as LoggedSpan;

it('takes out of a log what its sensors show wrong, and leaves holes and the rest', () => {
  const sensorErrors = {
    irradianceWM2: { share: 0.02, offset: 0 },
    ambientC: { share: 0, offset: 0.5 },
    flowLMin: { share: 0.1, offset: 0 },
  };
  const right = putRight(span, { ...usualLoop, sensorErrors });
  expect(right.minutes.values).toEqual({
    irradianceWM2: Float64Array.of(500, Number.NaN),
    ambientC: Float64Array.of(20, 21),
    windMs: values.windMs,
  });
  expect(right.day).toBe('2031-06-21');
  expect(values.ambientC[0]).toBe(20.5);
});
