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
  const followed = follow(span, sky, { traits: {}, steps: { factor: 0, airK: 0, skyWM2: 0 }, panOffsetK: 0 });
  expect(span.dayFromMs - span.minutes.fromMs).toBe(-(first + 1) * minuteMs);
  expect(panLiquidKg(followed.begin)).toBeLessThan(1);
  // A window of draws begins with the day.
  expect((fromMs - followed.draws.fromMs) % followed.draws.stepMs).toBe(0);
  expect(followed.conditions).toHaveLength(span.minutes.count);
});

/** A dry pan whose sheet is far too warm in the morning for any sky, and far too cold in the evening. */
const ofTwoNights = minutely(-61, 1440, (minute) => ({
  input: {
    feedback: null,
    readings: {
      panSheetC: { value: minute < 720 ? 50 : -20, ageMs: 0 },
      ambientC: { value: 15, ageMs: 0 },
    },
  },
  outcome: { phase: 'empty', outputs: safeOutputs },
}));

test('the sky goes by day from what one night told to what the next does', () => {
  const span = spanOf(ofTwoNights);
  const sky = skyColumns(span, () => assumedAirC(span));
  const options = { traits: {}, panOffsetK: 0 };
  const plain = follow(span, sky, { ...options, steps: { factor: 0, airK: 0, skyWM2: 0 } });
  const told = follow(span, sky, { ...options, steps: { factor: 0, airK: 0, skyWM2: 10 } });
  const more = told.conditions.map(
    ({ longWaveWM2 }, i) => longWaveWM2 - (plain.conditions[i]?.longWaveWM2 as number),
  );
  const dark = sky.sun.zenithDeg.map((zenithDeg) => Number(zenithDeg > 96));
  // The last window that is wholly dark before the day, and the first one after it.
  const at = (minute: number) => more[minute] as number;
  const [dawn, dusk] = [dark.indexOf(0) - 10, dark.lastIndexOf(0) + 10];
  expect(at(dawn)).toBeCloseTo(80, 6);
  expect(at(dusk)).toBeLessThan(0);
  const falls = [60, 120, 300, 600].map((after) => at(dawn + after) - at(dawn + after + 10));
  for (const fall of falls) expect(fall).toBeCloseTo(((at(dawn) - at(dusk)) * 10) / (dusk - dawn), 0);
});
