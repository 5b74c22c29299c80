import { expect, test } from 'vitest';
import { safeOutputs } from '../../../../../controller/engine/index.ts';
import { assumedAirC } from '../../../../../sim/identify/world/assumed-air.ts';
import { follow } from '../../../../../sim/identify/world/follow.ts';
import { skyColumns } from '../../../../../sim/identify/world/sky-columns.ts';
import { panLiquidKg } from '../../../../../sim/plant/state.ts';
import { fromMs, minutely, minuteMs, spanOf } from './span-rig.ts';

/** The pump runs until 25 minutes before the day; at midnight the pan is empty. */
const emptied = (first: number) =>
  minutely(first, 1440, (minute) =>
    minute < -25 ? {} : { input: { feedback: null }, outcome: { phase: 'empty', outputs: safeOutputs } },
  );

test.each([-61, -56, -53])('a day whose log begins at minute %i begins as it stood at midnight', (first) => {
  const span = spanOf(emptied(first));
  const sky = skyColumns(span, () => assumedAirC(span));
  const followed = follow(span, sky, { traits: {}, steps: { factor: 0, airK: 0 }, panOffsetK: 0 });
  expect(span.dayFromMs - span.minutes.fromMs).toBe(-(first + 1) * minuteMs);
  expect(panLiquidKg(followed.begin)).toBeLessThan(1);
  // A window of draws begins with the day.
  expect((fromMs - followed.draws.fromMs) % followed.draws.stepMs).toBe(0);
  expect(followed.conditions).toHaveLength(span.minutes.count);
});
