import { describe, expect, it } from 'vitest';
import { moveAlong } from '../../../../sim/plant/row.ts';
import { type Cell, totalKg } from '../../../../sim/plant/water.ts';

const cells = (...pairs: [number, number][]): Cell[] => pairs.map(([massKg, waterC]) => ({ massKg, waterC }));

describe('water moved along a row', () => {
  it('fills a dry row from one end and spreads evenly', () => {
    const row = cells([0, 5], [0, 5]);
    moveAlong(row, [{ cell: 0, massKg: 4, waterC: 30 }], []);
    expect(row).toEqual(cells([2, 30], [2, 30]));
  });

  it('pushes water through and mixes each cell with what comes in', () => {
    const row = cells([1, 20], [1, 10]);
    moveAlong(row, [{ cell: 0, massKg: 1, waterC: 40 }], [{ cell: 1, massKg: 1 }]);
    // 1 kg at 20 with 1 kg at 40 makes 30; 1 kg of that with 1 kg at 10 makes 20.
    expect(row).toEqual(cells([1, 30], [1, 20]));
  });

  it('works from the last cell to the first when the flow runs that way', () => {
    const row = cells([1, 20], [1, 10]);
    moveAlong(row, [{ cell: 1, massKg: 1, waterC: 40 }], [{ cell: 0, massKg: 1 }]);
    expect(row).toEqual(cells([1, 22.5], [1, 25]));
  });

  it('parts the flow when water comes into the middle', () => {
    const row = cells([2, 0], [2, 0], [2, 0]);
    moveAlong(row, [{ cell: 1, massKg: 6, waterC: 40 }], []);
    expect(row.map(({ massKg }) => massKg)).toEqual([4, 4, 4]);
    // 2 kg at 0 and 6 at 40 make 30; each neighbour takes 2 kg of that to its own 2 at 0.
    expect(row.map(({ waterC }) => waterC)).toEqual([15, 30, 15]);
  });

  it('can be emptied to the last drop and keeps a temperature', () => {
    const row = cells([1, 20], [1, 10]);
    moveAlong(row, [], [{ cell: 1, massKg: 2 }]);
    expect(totalKg(row)).toBe(0);
    expect(row[1]?.waterC).toBe(15);
  });

  it('leaves all as it is when nothing moves', () => {
    const row = cells([1, 20], [1, 10]);
    moveAlong(row, [], []);
    expect(row).toEqual(cells([1, 20], [1, 10]));
  });
});
