import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Account, openBooks, unexplainedJ, unexplainedKg } from '../../../sim/plant/account.ts';
import { advance } from '../../../sim/plant/advance.ts';
import { declarationOf, type FaultName, faultNames } from '../../../sim/plant/faults.ts';
import { impossibilities } from '../../../sim/plant/impossible.ts';
import { partsOf } from '../../../sim/plant/parts.ts';
import { createExchange, letIn, letOut, moveAlong } from '../../../sim/plant/row.ts';
import { createPlant, plantKg } from '../../../sim/plant/state.ts';
import { traitDeclarations, traitNames } from '../../../sim/plant/traits.ts';
import { rowJ, rowKg, waterJKgK } from '../../../sim/plant/water.ts';
import { dullNoon, panKg, plumbedSite, plumbings } from '../../support/plants.ts';

const scaled = (least: number, most: number, step: number) =>
  fc.integer({ min: Math.round(least / step), max: Math.round(most / step) }).map((n) => n * step);

/** A part's fault with a size of its range. */
const fault = fc.constantFrom(...faultNames).chain((name) => {
  const { size } = declarationOf(name);
  const share = fc.integer({ min: 0, max: 100 });
  return share.map((percent) => ({
    name,
    size: size === undefined ? 0 : size.least + ((size.most - size.least) * percent) / 100,
  }));
});

const spell = fc.record({
  outputs: fc.record({
    pumpFraction: fc.constantFrom(0, 0.35, 1),
    drainOpen: fc.boolean(),
    drainPumpOn: fc.boolean(),
    exchangerPumpOn: fc.boolean(),
    heatDumpOn: fc.boolean(),
  }),
  dtS: scaled(0.5, 60, 0.5),
  steps: fc.integer({ min: 1, max: 60 }),
  weather: fc.record({
    beamWM2: scaled(0, 900, 1),
    diffuseWM2: scaled(0, 300, 1),
    sunZenithDeg: scaled(0, 120, 1),
    sunAzimuthDeg: scaled(0, 360, 1),
    airC: scaled(-25, 40, 0.1),
    windMs: scaled(0, 25, 0.1),
    longWaveWM2: scaled(150, 450, 1),
    rainMmH: fc.constantFrom(0, 0, 4, 30),
    snowMmH: fc.constantFrom(0, 0, 2),
    solarHour: scaled(0, 23.9, 0.1),
  }),
  faults: fc.array(fault, { maxLength: 2 }),
});

/** Any loop: some of its traits drawn from their ranges. */
const drawTraits = ['tapC', 'makeUpC', 'drawnStoreFraction'] as const;
const step = fc.integer({ min: 0, max: 20 });
const traits = fc
  .tuple(
    fc.array(fc.tuple(fc.constantFrom(...traitNames), step), { maxLength: 4 }),
    fc.array(fc.tuple(fc.constantFrom(...drawTraits), step), { maxLength: 3 }),
  )
  .map((drawn) => drawn.flat())
  .map((drawn) =>
    Object.fromEntries(
      drawn.map(([name, place]) => {
        const { least, most } = traitDeclarations[name];
        return [name, least + ((most - least) * place) / 20];
      }),
    ),
  );

/**
 * A sheet without water is as hot, or as cold, as sun and sky less what goes up with each kelvin allow. These are more
 * than the sun and less than the sky that any spell has.
 */
const { sunWM2, skyWM2 } = { sunWM2: 1600, skyWM2: 450 };

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

describe('the simulated loop under any outputs, weather, traits and faults', () => {
  it('keeps energy and water to 1e-9, and no cell runs below empty or out of the believable', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...plumbings),
        fc.boolean(),
        traits,
        fc.array(spell, { minLength: 1, maxLength: 12 }),
        (how, panFull, own, spells) => {
          const site = { ...plumbedSite(...how), heatDump: { conductanceWK: 300 } };
          const parts = partsOf(site, { traits: own });
          const { store, pan, pipe, pump, collector } = parts;
          // A store that cannot fill pan and pipes, and a sheet that nothing cools, are refused elsewhere.
          fc.pre(store.startKg > pan.fullKg + pipe.fullKg);
          fc.pre(!impossibilities(parts).some(({ code }) => code === 'loss-all-down'));
          const plant = createPlant(site, { waterC: 35, panC: 20, panFull, traits: own });
          const books = openBooks(plant);
          for (const { outputs, dtS, steps, faults, weather } of spells)
            for (let i = 0; i < steps; i++) {
              const irradianceWM2 = weather.beamWM2 + weather.diffuseWM2;
              const conditions = { ...dullNoon, ...weather, irradianceWM2 };
              const there = faults.map((one: { name: FaultName; size: number }) => ({
                ...one,
                forS: i * dtS,
              }));
              advance(plant, outputs, conditions, dtS, there, books.account);
            }
          // Ice takes its room: no more stands in the pan than its walls hold.
          expect(panKg(plant)).toBeLessThan(pan.wallKg * 1.0001 + pump.ratedKgS * 1.5 * 60);
          const upWM2K = collector.stillLossWM2K - parts.traits.insulationWM2K;
          const rows = [plant.pan.core, plant.pan.edge, plant.store, plant.supply, plant.return];
          for (const row of rows) {
            for (const kg of [...row.massKg, ...row.iceKg]) expect(kg).toBeGreaterThanOrEqual(-1e-9);
            expect(Math.max(...row.waterC)).toBeLessThan(40 + sunWM2 / upWM2K);
            expect(Math.min(...row.waterC)).toBeGreaterThan(-25 - skyWM2 / upWM2K);
          }
          const scaleJ = turnover(books.account) + Math.abs(books.heldJ);
          expect(Math.abs(unexplainedJ(books, plant))).toBeLessThan(1e-9 * scaleJ);
          expect(Math.abs(unexplainedKg(books, plant))).toBeLessThan(1e-9 * (plantKg(plant) + books.heldKg));
        },
      ),
      { numRuns: 150 },
    );
  });
});

describe('water moved along any row', () => {
  it('keeps mass and heat, reaches its targets, and stays between the temperatures it began with', () => {
    const cell = fc.record({ massKg: scaled(0, 50, 0.01), waterC: scaled(1, 90, 0.01) });
    const inflow = fc.record({ place: fc.nat(8), massKg: scaled(0, 80, 0.01), waterC: scaled(1, 90, 0.01) });
    fc.assert(
      fc.property(
        fc.array(cell, { minLength: 1, maxLength: 9 }),
        fc.array(inflow, { maxLength: 3 }),
        fc.nat(8),
        scaled(0, 1, 0.01),
        fc.array(scaled(0.01, 1, 0.01), { minLength: 9, maxLength: 9 }),
        fc.boolean(),
        (cells, inflows, outPlace, outShare, shape, even) => {
          const count = cells.length;
          const row = {
            massKg: cells.map(({ massKg }) => massKg),
            waterC: cells.map(({ waterC }) => waterC),
            iceKg: cells.map(() => 0),
          };
          const exchange = createExchange(count);
          const there = [...cells, ...inflows].filter(({ massKg }) => massKg > 0);
          const inKg = rowKg(row) + inflows.reduce((kg, { massKg }) => kg + massKg, 0);
          const inJ =
            rowJ(row) + inflows.reduce((j, { massKg, waterC }) => j + massKg * waterC * waterJKgK, 0);
          for (const { place, massKg, waterC } of inflows) letIn(exchange, place % count, massKg, waterC);
          const out = { cell: outPlace % count, massKg: outShare * inKg };
          letOut(exchange, out.cell, out.massKg);
          const shares = shape.slice(0, count);
          const whole = shares.reduce((a, b) => a + b, 0);
          const targets = shares.map((share) => (share / whole) * (inKg - out.massKg));
          moveAlong(row, exchange, even ? undefined : targets);
          const outJ = out.massKg * waterJKgK * (row.waterC[out.cell] ?? 0);
          expect(Math.abs(rowKg(row) + out.massKg - inKg)).toBeLessThan(1e-9 * (1 + inKg));
          expect(Math.abs(rowJ(row) + outJ - inJ)).toBeLessThan(1e-9 * (1 + inJ));
          if (even) expect(new Set(row.massKg).size).toBe(1);
          else expect(row.massKg).toEqual(targets);
          if (rowKg(row) > 1e-6)
            for (const waterC of row.waterC) {
              expect(waterC).toBeGreaterThan(Math.min(...there.map((c) => c.waterC)) - 1e-9);
              expect(waterC).toBeLessThan(Math.max(...there.map((c) => c.waterC)) + 1e-9);
            }
        },
      ),
      { numRuns: 500 },
    );
  });
});
