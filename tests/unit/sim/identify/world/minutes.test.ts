import { expect, test } from 'vitest';
import { safeOutputs } from '../../../../../controller/engine/index.ts';
import { createMinutes } from '../../../../../sim/identify/world/minutes.ts';

const pumping = { ...safeOutputs, pumpFraction: 1, drainOpen: false };

test('readings become the mean of the minute that they end or lie in', () => {
  const taker = createMinutes(0, 2);
  taker.read(0, 'panSheetC', 99);
  taker.read(30_000, 'panSheetC', 10);
  taker.read(60_000, 'panSheetC', 20);
  taker.read(60_001, 'panSheetC', 7);
  taker.read(120_001, 'panSheetC', 99);
  expect([...(taker.minutes().values.panSheetC ?? [])]).toEqual([15, 7]);
});

test('a minute without a reading holds no number, and a channel that was never read is not there', () => {
  const taker = createMinutes(0, 2);
  taker.read(90_000, 'ambientC', 4);
  const { values } = taker.minutes();
  expect(values.ambientC?.[0]).toBeNaN();
  expect(values.windMs).toBeUndefined();
});

test('drives are cut at whole minutes, and joined while they do the same', () => {
  const taker = createMinutes(0, 2);
  taker.drive(-5_000, 10_000, safeOutputs);
  taker.drive(10_000, 20_000, safeOutputs);
  taker.drive(20_000, 90_000, pumping);
  taker.drive(90_000, 130_000, safeOutputs);
  expect(taker.minutes().drives).toEqual([
    [
      { endMs: 20_000, dtS: 20, outputs: safeOutputs },
      { endMs: 60_000, dtS: 40, outputs: pumping },
    ],
    [
      { endMs: 90_000, dtS: 30, outputs: pumping },
      { endMs: 120_000, dtS: 30, outputs: safeOutputs },
    ],
  ]);
});

test('steps are counted in their minute', () => {
  const taker = createMinutes(60_000, 2);
  for (const atMs of [60_000, 60_001, 120_000, 150_000]) taker.step(atMs);
  expect([...taker.minutes().steps]).toEqual([2, 1]);
});
