import { expect, onTestFinished, test } from 'vitest';
import { openStage } from '../../../../sim/import/stage.ts';

/** A stage with rows at the seconds, in that order. */
function staged(...seconds: number[]) {
  const stage = openStage(['panOutletC', 'flowLMin']);
  onTestFinished(() => stage.close());
  let piece = 0;
  seconds.forEach((second, index) => {
    if (second < (seconds[index - 1] ?? 0)) piece++;
    stage.take({
      ...{ atMs: second * 1000, line: index + 2, piece, repeated: index === 1 },
      ...{
        values: { flowLMin: index },
        pumpFraction: index === 0 ? null : 0.5,
        drainOpen: index === 2 ? true : null,
      },
    });
  });
  return stage;
}

test('rows come back as they went in, by their instant, from the first bound on and before the second', () => {
  const stage = staged(60, 0, 120);
  expect(stage.rowsOf(0, 120_000)).toEqual([
    {
      atMs: 0,
      line: 3,
      piece: 1,
      repeated: true,
      values: { flowLMin: 1 },
      pumpFraction: 0.5,
      drainOpen: null,
    },
    {
      atMs: 60_000,
      line: 2,
      piece: 0,
      repeated: false,
      values: { flowLMin: 0 },
      pumpFraction: null,
      drainOpen: null,
    },
  ]);
  expect(stage.rowsOf(120_000, 120_001)).toMatchObject([{ drainOpen: true }]);
  expect(stage.firstRows(2).map(({ line }) => line)).toEqual([2, 3]);
  expect([stage.firstFrom(60_000), stage.firstFrom(60_001), stage.firstFrom(120_001)]).toEqual([
    60_000,
    120_000,
    undefined,
  ]);
});

test('the usual step is the commonest, and more than four of them are a gap', () => {
  expect(staged(0, 10, 20, 60, 101, 101).facts()).toEqual({
    firstMs: 0,
    lastMs: 101_000,
    usualStepMs: 10_000,
    gaps: 1,
    inOrder: true,
  });
  expect(staged(7).facts()).toMatchObject({ usualStepMs: null, gaps: 0 });
  expect(staged().facts()).toEqual({
    firstMs: null,
    lastMs: null,
    usualStepMs: null,
    gaps: 0,
    inOrder: true,
  });
});

test('one step back in fifty rows leaves a file in order, more do not', () => {
  const rows = Array.from({ length: 49 }, (_, index) => index + 1);
  expect(staged(...rows, 0).facts().inOrder).toBe(true);
  expect(staged(...rows.slice(1), 0).facts().inOrder).toBe(false);
});
