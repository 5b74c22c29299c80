import { describe, expect, it } from 'vitest';
import { initialState } from '../../../../controller/engine/index.ts';
import { contactSample } from '../../../../controller/engine/watch/contact.ts';
import { judgeContact } from '../../../../controller/engine/watch/judge-contact.ts';
import { newUpkeep, noSums, type UpkeepMemory } from '../../../../controller/engine/watch/memory.ts';
import { situationOf } from '../watch-rig.ts';

const nowMs = 3_600_000;
const since = (name: string, forMs: number) => ({ phase: { name, sinceMs: nowMs - forMs } });
/** The sheet stands 8 K above the middle of water that is warmed from 20 to 30 °C. */
const values = { panOutletC: 30, panSheetC: 33, storeBottomC: 20 } as const;
/** What comes home from 10 m2 [W/m2]. */
const home = (heatWM2: number) => ({ meter: { ...initialState().meter, rateW: 10 * heatWM2 } });

describe('a sample of the contact', () => {
  it.each<[string, object, object]>([
    ['without the sheet in flow', { panOutletC: 30, storeBottomC: 20 }, home(300)],
    ['without the outlet in flow', { panSheetC: 33, storeBottomC: 20 }, home(300)],
    ['without the source in flow', { panOutletC: 30, panSheetC: 33 }, home(300)],
    [
      'of a resting pan that is not full',
      values,
      { ...since('resting', 0), water: { level: 'part', trendC: 29 } },
    ],
  ])('is none %s', (_, some, state) => {
    expect(contactSample(situationOf({ values, state: home(300) }))).toEqual({ excessK: 8, heatWM2: 300 });
    expect(contactSample(situationOf({ values: some, state }))).toBeNull();
  });
});

describe('the contact in flow', () => {
  const judge = (upkeep: Partial<UpkeepMemory>, learnt: object = {}, heatWM2 = 480) =>
    judgeContact(
      { upkeep: { ...newUpkeep, sheetExcessK: 8, ...upkeep }, learnt: learnt as never },
      situationOf({ values, state: { ...since('circulating', 2_400_000), ...home(heatWM2) } }),
    );

  it('is summed up from 100 W/m2 on', () => {
    expect(judge({}, {}, 100).upkeep.flowContact.forMs).toBe(5000);
    expect(judge({}, {}, 99.9).upkeep.flowContact).toBe(noSums);
  });

  /** A time of which a computer divides sums without rounding [ms]. */
  const forMs = 2 ** 22;
  /** Sums that the next step of 5 s completes to this excess at 480 W/m2. */
  const upTo = (excessK: number, poorInARow = 0): Partial<UpkeepMemory> => ({
    flowContact: {
      excessKMs: excessK * forMs - 8 * 5000,
      heatWM2Ms: 480 * (forMs - 5000),
      forMs: forMs - 5000,
      poorInARow,
    },
  });
  const isPoor = (excessK: number, learnt: object) =>
    judge(upTo(excessK, 1), learnt).upkeep.poorContactK !== null;

  it('is poor from 1.2 K above what heat explains, where that is also half as much again', () => {
    const explains = (excessK: number) => ({ flowContactKM2W: excessK / 480 });
    expect([isPoor(1.875 + 1.2, explains(1.875)), isPoor(3.074, explains(1.875))]).toEqual([true, false]);
    expect([isPoor(11.25, explains(7.5)), isPoor(11.249, explains(7.5))]).toEqual([true, false]);
  });

  it('is taken for the rule up to 60 W/m2K', () => {
    expect([judge(upTo(8)).learnt, judge(upTo(8.001)).learnt]).toEqual([{ flowContactKM2W: 8 / 480 }, {}]);
  });

  it('counts how often it was poor in a row, and begins anew when it was not', () => {
    const known = { flowContactKM2W: 1 / 64 };
    const inARow = (excessK: number) => judge(upTo(excessK, 1), known).upkeep.flowContact.poorInARow;
    expect([inARow(20), inARow(8)]).toEqual([2, 0]);
  });

  it('is not taken for the rule while it was found poor, in flow or at rest', () => {
    const rest = (poorInARow: number) => ({ restContact: { ...noSums, poorInARow } });
    expect(judge({ ...upTo(8), ...rest(1) }).learnt).toEqual({});
    expect(judge({ ...upTo(8, 1), ...rest(0) }).learnt).toEqual({});
    expect(judge({ ...upTo(8, 1), ...rest(1) }).learnt).toEqual({});
    expect(judge({ ...upTo(8), ...rest(0) }).learnt).toEqual({ flowContactKM2W: 8 / 480 });
  });
});
