import { describe, expect, it } from 'vitest';
import { emptyAccount, openBooks, unexplainedJ } from '../../../../sim/plant/account.ts';
import { advance } from '../../../../sim/plant/advance.ts';
import { cooledKgC } from '../../../../sim/plant/heat-dump.ts';
import { actuatorsOf } from '../../../../sim/plant/impairments.ts';
import { partsOf } from '../../../../sim/plant/parts.ts';
import { createPlant } from '../../../../sim/plant/state.ts';
import { waterJKgK } from '../../../../sim/plant/water.ts';
import { dullNoon, pumping } from '../../../support/plants.ts';
import { demoContent, siteOf } from '../../../support/sites.ts';

const site = siteOf(demoContent({ heatDump: { conductanceWK: 300 } }));
const plantOf = (at = site) => createPlant(at, { waterC: 60, panC: 60, panFull: true, draw: 'none' });
const dumping = { ...pumping, heatDumpOn: true };

describe('the radiator of the heat dump', () => {
  it('cools what passes towards the air, by 1 - exp(-NTU)', () => {
    const plant = plantOf();
    // One kilogram in ten seconds: NTU = 300 * 10 / waterJKgK.
    const leftK = 40 * Math.exp(-3000 / waterJKgK);
    expect(cooledKgC(plant, { massKg: 1, massKgC: 60 }, 20, 10)).toBeCloseTo(20 + leftK, 9);
    expect(cooledKgC(plant, { massKg: 1, massKgC: 10 }, 20, 10)).toBeGreaterThan(10);
    expect(cooledKgC(plant, { massKg: 0.001, massKgC: 0.001 }, -20, 10)).toBeCloseTo(0, 9);
    expect(cooledKgC(plant, { massKg: 0, massKgC: 0 }, 20, 10)).toBe(0);
  });

  it('does nothing where there is none, and is no part of such a loop', () => {
    const plain = plantOf(siteOf(demoContent()));
    expect(cooledKgC(plain, { massKg: 1, massKgC: 60 }, 20, 10)).toBe(60);
    expect(partsOf(siteOf(demoContent()))).not.toHaveProperty('heatDump');
  });

  it('gives its heat to the air, and the books still close', () => {
    const run = (outputs: typeof dumping) => {
      const plant = plantOf();
      const books = openBooks(plant);
      for (let step = 0; step < 180; step++) advance(plant, outputs, dullNoon, 10, [], books.account);
      expect(Math.abs(unexplainedJ(books, plant))).toBeLessThan(1);
      return books.account;
    };
    const on = run(dumping);
    const off = run({ ...dumping, heatDumpOn: false });
    expect(on.dumpedJ).toBeGreaterThan(1e7);
    expect(off.dumpedJ).toBe(0);
    expect(on.homeJ).toBeLessThan(off.homeJ);
    expect(emptyAccount().dumpedJ).toBe(0);
  });
});

describe('the output of the heat dump at the device', () => {
  const cut = { name: 'power-cut', size: 0, forS: 5 } as const;
  const stuck = { ...cut, name: 'dump-stuck-off' } as const;
  const dead = { ...cut, name: 'pump-dead' } as const;

  it('does what it is told, but for a fault', () => {
    expect(actuatorsOf(dumping, []).heatDumpOn).toBe(true);
    expect(actuatorsOf(dumping, [dead]).heatDumpOn).toBe(true);
    expect(actuatorsOf({ ...dumping, heatDumpOn: false }, [dead]).heatDumpOn).toBe(false);
    expect(actuatorsOf(dumping, [stuck]).heatDumpOn).toBe(false);
    expect(actuatorsOf(dumping, [cut]).heatDumpOn).toBeUndefined();
  });

  it('is not spoken of where there is none', () => {
    expect(actuatorsOf(pumping, [dead])).not.toHaveProperty('heatDumpOn');
  });
});
