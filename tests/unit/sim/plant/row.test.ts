import { describe, expect, it } from 'vitest';
import { createExchange, letIn, letOut, moveAlong, takeFromEnd } from '../../../../sim/plant/row.ts';
import { type Row, rowKg } from '../../../../sim/plant/water.ts';

const row = (...pairs: [number, number][]): Row => ({
  massKg: pairs.map(([massKg]) => massKg),
  waterC: pairs.map(([, waterC]) => waterC),
  iceKg: pairs.map(() => 0),
});

/** Moves a row with one inflow and one outflow. */
function move(
  water: Row,
  enters?: { cell: number; massKg: number; waterC: number },
  leaves?: { cell: number; massKg: number },
  targets?: number[],
): Row {
  const exchange = createExchange(water.massKg.length);
  if (enters !== undefined) letIn(exchange, enters.cell, enters.massKg, enters.waterC);
  if (leaves !== undefined) letOut(exchange, leaves.cell, leaves.massKg);
  moveAlong(water, exchange, targets);
  return water;
}

describe('water moved along a row', () => {
  it('fills a dry row from one end and spreads evenly', () => {
    expect(move(row([0, 5], [0, 5]), { cell: 0, massKg: 4, waterC: 30 })).toEqual(row([2, 30], [2, 30]));
  });

  it('pushes water through and mixes each cell with what comes in', () => {
    // 1 kg at 20 with 1 kg at 40 makes 30; 1 kg of that with 1 kg at 10 makes 20.
    expect(move(row([1, 20], [1, 10]), { cell: 0, massKg: 1, waterC: 40 }, { cell: 1, massKg: 1 })).toEqual(
      row([1, 30], [1, 20]),
    );
  });

  it('works from the last cell to the first when the flow runs that way', () => {
    expect(move(row([1, 20], [1, 10]), { cell: 1, massKg: 1, waterC: 40 }, { cell: 0, massKg: 1 })).toEqual(
      row([1, 22.5], [1, 25]),
    );
  });

  it('parts the flow when water comes into the middle', () => {
    const parted = move(row([2, 0], [2, 0], [2, 0]), { cell: 1, massKg: 6, waterC: 40 });
    expect(parted.massKg).toEqual([4, 4, 4]);
    // 2 kg at 0 and 6 at 40 make 30; each neighbour takes 2 kg of that to its own 2 at 0.
    expect(parted.waterC).toEqual([15, 30, 15]);
  });

  it('gathers what is left where the targets want it', () => {
    const gathered = move(row([1, 20], [1, 10], [1, 0]), undefined, { cell: 0, massKg: 1.5 }, [1, 0.5, 0]);
    expect(gathered.massKg).toEqual([1, 0.5, 0]);
    // All of the last cell and most of the middle run to the first.
    expect(gathered.waterC[1]).toBeCloseTo(5, 12);
    expect(gathered.waterC[0]).toBeCloseTo((20 + 1.5 * 5) / 2.5, 12);
  });

  it('can be emptied to the last drop and keeps a temperature', () => {
    const empty = move(row([1, 20], [1, 10]), undefined, { cell: 1, massKg: 2 });
    expect(rowKg(empty)).toBe(0);
    expect(empty.waterC[1]).toBe(15);
  });

  it('leaves all as it is when nothing moves', () => {
    expect(move(row([1, 20], [1, 10]))).toEqual(row([1, 20], [1, 10]));
  });

  it('cools what comes in by the ice that stands in its way', () => {
    const icy = { ...row([1, 0]), iceKg: [4184 / 2100] };
    move(icy, { cell: 0, massKg: 2, waterC: 40 });
    // Ice with the heat capacity of another kilogram of water.
    expect(icy.waterC[0]).toBeCloseTo(20, 12);
  });

  it('leaves the exchange empty for the next move', () => {
    const exchange = createExchange(2);
    letIn(exchange, 0, 1, 40);
    letOut(exchange, 1, 1);
    moveAlong(row([1, 20], [1, 10]), exchange);
    expect([...exchange.inKg, ...exchange.inKgC, ...exchange.outKg]).toEqual([0, 0, 0, 0, 0, 0]);
  });
});

describe('water taken from an end', () => {
  it('comes with the temperatures that it had, one cell after another', () => {
    const store = row([2, 50], [2, 40], [2, 10]);
    expect(takeFromEnd(store, 3, true)).toBe(2 * 10 + 40);
    expect(store.massKg).toEqual([2, 1, 0]);
    expect(takeFromEnd(store, 1, false)).toBe(50);
    expect(store.massKg).toEqual([1, 1, 0]);
  });
});
