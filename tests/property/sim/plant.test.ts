import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Account,
  addAccount,
  emptyAccount,
  unexplainedJ,
  unexplainedKg,
} from '../../../sim/plant/account.ts';
import { advance } from '../../../sim/plant/advance.ts';
import { faultNames } from '../../../sim/plant/faults.ts';
import { moveAlong } from '../../../sim/plant/row.ts';
import { createPlant, plantJ, plantKg } from '../../../sim/plant/state.ts';
import { totalJ, totalKg } from '../../../sim/plant/water.ts';
import { dullNoon, plumbedSite, plumbings } from '../../support/plants.ts';

const scaled = (least: number, most: number, step: number) =>
  fc.integer({ min: Math.round(least / step), max: Math.round(most / step) }).map((n) => n * step);

const spell = fc.record({
  outputs: fc.record({
    pumpFraction: fc.constantFrom(0, 0.35, 1),
    drainOpen: fc.boolean(),
    drainPumpOn: fc.boolean(),
    exchangerPumpOn: fc.boolean(),
  }),
  dtS: scaled(0.5, 60, 0.5),
  steps: fc.integer({ min: 1, max: 60 }),
  irradianceWM2: scaled(0, 1100, 1),
  airC: scaled(-20, 40, 0.1),
  windMs: scaled(0, 25, 0.1),
  longWaveWM2: scaled(150, 450, 1),
  solarHour: scaled(0, 23.9, 0.1),
  fault: fc.option(fc.constantFrom(...faultNames), { nil: undefined }),
});
const sizes: Partial<Record<(typeof faultNames)[number], number>> = { 'half-flow': 0.5 };

/** All that went through, as the measure of what rounding may leave. */
function turnover(a: Account): number {
  return (
    Math.abs(a.gainJ) +
    a.pumpJ +
    a.madeUpJ +
    Math.abs(a.airJ) +
    Math.abs(a.linerJ) +
    Math.abs(a.storeJ) +
    a.drawnJ
  );
}

describe('the simulated loop under any outputs, weather and faults', () => {
  it('keeps energy and water to 1e-9, and no cell runs below empty', () => {
    const plumbing = fc.constantFrom(...plumbings);
    fc.assert(
      fc.property(
        plumbing,
        fc.boolean(),
        fc.array(spell, { minLength: 1, maxLength: 12 }),
        (how, panFull, spells) => {
          const plant = createPlant(plumbedSite(...how), { waterC: 35, panC: 20, panFull });
          const heldJ = plantJ(plant);
          const sum = emptyAccount();
          for (const { outputs, dtS, steps, fault, ...weather } of spells) {
            const faults = fault === undefined ? [] : [{ name: fault, size: sizes[fault] ?? 0 }];
            for (let i = 0; i < steps; i++)
              addAccount(sum, advance(plant, outputs, { ...dullNoon, ...weather }, dtS, faults));
          }
          const rows = [plant.pan, plant.store, plant.supply, plant.return];
          for (const cell of rows.flat()) expect(cell.massKg).toBeGreaterThanOrEqual(0);
          for (const cell of rows.flat()) expect(Math.abs(cell.waterC - 40)).toBeLessThan(120);
          expect(Math.abs(unexplainedJ(sum))).toBeLessThan(1e-9 * (turnover(sum) + Math.abs(heldJ)));
          expect(Math.abs(unexplainedKg(sum))).toBeLessThan(1e-9 * plantKg(plant));
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe('water moved along any row', () => {
  it('keeps mass and heat, evens the cells, and stays between the temperatures it began with', () => {
    const cell = fc.record({ massKg: scaled(0, 50, 0.01), waterC: scaled(1, 90, 0.01) });
    fc.assert(
      fc.property(
        fc.array(cell, { minLength: 1, maxLength: 9 }),
        fc.array(fc.record({ place: fc.nat(8), massKg: scaled(0, 80, 0.01), waterC: scaled(1, 90, 0.01) }), {
          maxLength: 3,
        }),
        fc.nat(8),
        scaled(0, 1, 0.01),
        (row, inflows, outPlace, outShare) => {
          const enters = inflows.map(({ place, ...water }) => ({ ...water, cell: place % row.length }));
          const temperatures = [...row, ...enters].filter((c) => c.massKg > 0).map((c) => c.waterC);
          const inKg = totalKg(row) + totalKg(enters);
          const inJ = totalJ(row) + totalJ(enters);
          const out = { cell: outPlace % row.length, massKg: outShare * inKg };
          moveAlong(row, enters, [out]);
          const outJ = out.massKg * 4184 * (row[out.cell]?.waterC ?? 0);
          expect(Math.abs(totalKg(row) + out.massKg - inKg)).toBeLessThan(1e-9 * (1 + inKg));
          expect(Math.abs(totalJ(row) + outJ - inJ)).toBeLessThan(1e-9 * (1 + inJ));
          expect(new Set(row.map(({ massKg }) => massKg)).size).toBe(1);
          if (totalKg(row) > 1e-6)
            for (const { waterC } of row) {
              expect(waterC).toBeGreaterThan(Math.min(...temperatures) - 1e-9);
              expect(waterC).toBeLessThan(Math.max(...temperatures) + 1e-9);
            }
        },
      ),
    );
  });
});
