import { describe, expect, it } from 'vitest';
import { panCheckSchema } from '../../../../shared-types/pan-check.ts';
import { type LoopFit, loopFitSchema } from '../../../../shared-types/tuning.ts';
import { checkPan } from '../../../../sim/pan-check/check-pan.ts';
import { dayName, goodPan, type PanOfDay, panLog, panMinute, site } from './pan-days.ts';

const days = 14;

function loopFitOf(traits: Readonly<Record<string, number>>): LoopFit {
  return loopFitSchema.parse({
    ...{ schemaVersion: 1, site: site.name, days: [dayName(0)], converged: true },
    parameters: Object.entries(traits).map(([name, value]) => ({
      ...{ name, value, unit: '1', standardError: 0.01, heldBecause: null },
    })),
    ...{ covariance: [], residuals: [], verdicts: [] },
  });
}

/** What is otherwise from the eighth day on; the efficiency may be another one each day. */
type Later = Partial<Omit<PanOfDay, 'efficiency'>> & {
  readonly efficiency?: number | ((day: number) => number);
};

/** Fourteen days of a pan, of which the last seven may be another one. */
function checked({ efficiency, ...later }: Later) {
  const own = (day: number) =>
    typeof efficiency === 'function' ? efficiency(day) : (efficiency ?? goodPan.efficiency);
  const pan = (day: number) => (day < 7 ? goodPan : { ...goodPan, ...later, efficiency: own(day) });
  const reader = panLog(days, (day, minute) => panMinute(pan(day), day, minute));
  const names = Array.from({ length: days }, (_, day) => dayName(day));
  const result = checkPan(reader, { days: names, referenceDays: [], fit: null });
  if (result?.ok !== true) throw new Error(JSON.stringify(result));
  return panCheckSchema.parse(result.check);
}

const codes = (later: Later) => checked(later).findings.map(({ code }) => code);

describe('a pan that is as it was', () => {
  const check = checked({});

  it('brings what is expected of it, on each day and in each group', () => {
    expect(check.findings.map(({ code }) => code)).toEqual(['as-good']);
    expect(check.days).toHaveLength(days);
    for (const { ratio } of check.days) expect(Math.abs(ratio.value - 1)).toBeLessThan(2e-3);
    expect(check.blocks.map(({ fromDay, toDay }) => [fromDay, toDay])).toEqual([[dayName(7), dayName(13)]]);
  });

  it('is told with the efficiency and the loss that it has', () => {
    for (const { efficiency, lossWM2K, contactKM2W } of [check.reference, ...check.blocks]) {
      expect(Math.abs(efficiency.value - goodPan.efficiency)).toBeLessThan(2e-3);
      expect(Math.abs((lossWM2K?.value ?? 0) - goodPan.lossWM2K)).toBeLessThan(0.05);
      expect(Math.abs((contactKM2W?.value ?? 0) - goodPan.contactKM2W)).toBeLessThan(1e-4);
    }
  });
});

describe('a pan that changed', () => {
  it('and takes up less light brings less, and nothing else is found', () => {
    const check = checked({ efficiency: 0.81 });
    expect(check.findings.map(({ code }) => code)).toEqual(['gathers-less']);
    const [block] = check.blocks;
    expect(Math.abs((block?.efficiency.value ?? 0) - 0.81)).toBeLessThan(2e-3);
    const { measured, expected } = check.days
      .slice(7)
      .reduce(
        (sum, one) => ({ measured: sum.measured + one.measuredJ, expected: sum.expected + one.expectedJ }),
        {
          ...{ measured: 0, expected: 0 },
        },
      );
    expect(Math.abs((block?.ratio.value ?? 0) - measured / expected)).toBeLessThan(1e-9);
    expect(check.findings[0]?.text).toContain('look for dirt');
  });

  it('but by no more than its days scatter is not accused, nor called as good', () => {
    const check = checked({ efficiency: (day) => (day % 2 === 0 ? 0.96 : 0.79) });
    expect(check.findings.map(({ code }) => code)).toEqual(['not-sure']);
    const { value, low, high } = check.blocks[0]?.ratio ?? { value: 1, low: 1, high: 1 };
    expect(value).toBeLessThan(0.97);
    expect([low < 1, high > 1]).toEqual([true, true]);
  });

  it('and loses more is found to do so', () => {
    expect(codes({ lossWM2K: 15 })).toEqual(['gathers-less', 'loses-more']);
    expect(codes({ lossWM2K: 8 })).toEqual(['loses-less', 'gathers-more']);
  });

  it('and whose sheet stands higher over the water is found to', () => {
    expect(codes({ contactKM2W: 0.009 })).toEqual(['contact-poorer']);
    expect(codes({ contactKM2W: 0.004 })).toEqual(['contact-better']);
    expect(codes({ contactKM2W: 0.0068 })).toEqual(['as-good']);
  });

  it('and lies in the shade for an hour or two is told which', () => {
    const lightFraction = (hour: number) => (hour >= 14 && hour < 16 ? 0.6 : 1);
    const { findings } = checked({ lightFraction });
    expect(findings.map(({ code }) => code)).toEqual(['gathers-less', 'shaded']);
    expect(findings[1]?.text).toContain('From 14 to 16 h solar time');
  });
});

describe('a check', () => {
  const names = (count: number) => Array.from({ length: count }, (_, day) => dayName(day));
  const good = (count: number) => panLog(count, (day, minute) => panMinute(goodPan, day, minute));

  it('compares with the days that are asked for, though they are not among those looked at', () => {
    const result = checkPan(good(8), { days: names(8).slice(4), referenceDays: names(4), fit: null });
    if (result?.ok !== true) throw new Error('no check');
    expect(result.check.reference).toMatchObject({ fromDay: dayName(0), toDay: dayName(3), days: 4 });
    expect(result.check.blocks).toHaveLength(1);
    expect(result.check.days).toHaveLength(8);
  });

  it('says when there is nothing to compare, and refuses where even the reference is too short', () => {
    const alone = checkPan(good(4), { days: names(4), referenceDays: names(3), fit: null });
    expect(alone?.ok === true && alone.check.findings.map(({ code }) => code)).toEqual([
      'nothing-to-compare',
    ]);
    expect(alone?.ok === true && alone.check.days).toHaveLength(3);
    const short = checkPan(good(4), { days: names(4), referenceDays: [], fit: null });
    expect(short?.ok === false && short.why[0]).toMatch(/6 days .*; 4 are there/);
    const none = checkPan(good(1), { days: ['2031-07-01'], referenceDays: [], fit: null });
    expect(none?.ok === false && none.why).toEqual([
      expect.stringContaining('0 are there'),
      'Left out: nothing of 2031-07-01 is kept.',
    ]);
  });

  it('leaves out days of little flow and little heat, says so, and how old what it found is', () => {
    const reader = panLog(9, (day, minute) => {
      const done = panMinute(day === 6 ? { ...goodPan, clearFraction: 0.3 } : goodPan, day, minute);
      return day < 7 ? done : { ...done, circulates: done.circulates && minute < 540 };
    });
    const result = checkPan(reader, { days: names(9), referenceDays: names(3), fit: null });
    if (result?.ok !== true) throw new Error('no check');
    expect(result.check.days.map(({ day }) => day)).toEqual(names(6));
    expect(result.check.remarks).toContain(
      `Left out because of less than an hour and a half of steady flow through a full pan: ${dayName(7)}, ${dayName(8)}.`,
    );
    expect(result.check.remarks).toContain(
      `The newest day of use is ${dayName(5)}: what is found is not of 3 days after it.`,
    );
  });

  it('names days that tell too little, and counts them where they are many', () => {
    const blind = panLog(5, (day, minute) => {
      const { readings, circulates } = panMinute(goodPan, day, minute);
      const { ambientC: _, ...rest } = readings;
      return { circulates, readings: rest };
    });
    const result = checkPan(blind, { days: names(5), referenceDays: [], fit: null });
    expect(result?.ok === false && result.why).toEqual([
      expect.stringContaining('0 are there'),
      `Left out because no air was measured: ${names(3).join(', ')} and 2 days more.`,
    ]);
  });

  it('takes what the wind does from a fit of the loop, where there is one', () => {
    const windy = panLog(8, (day, minute) => {
      const { readings, circulates } = panMinute(goodPan, day, minute);
      return { circulates, readings: { ...readings, windMs: { value: 3, ageMs: 0 } } };
    });
    const asked = { days: names(8), referenceDays: [] };
    const fit = loopFitOf({ windOpticalSM: 0, windLossJM3K: 0 });
    const [usual, fitted] = [null, fit].map((own) => checkPan(windy, { ...asked, fit: own }));
    if (usual?.ok !== true || fitted?.ok !== true) throw new Error('no check');
    expect(Math.abs(fitted.check.reference.efficiency.value - goodPan.efficiency)).toBeLessThan(2e-3);
    expect(usual.check.reference.efficiency.value).toBeGreaterThan(goodPan.efficiency + 0.02);
    expect(fitted.check.remarks).toContain('What the wind takes is taken from the fit of the loop.');
  });

  it('tells how far it is, and ends when nobody wants it any more', () => {
    const told: number[] = [];
    const goOn = (fraction: number) => told.push(fraction) < 3;
    expect(checkPan(good(4), { days: names(4), referenceDays: [], fit: null, goOn })).toBeUndefined();
    expect(told).toEqual([0, 0.25, 0.5]);
    told.length = 0;
    checkPan(good(1), {
      days: names(1),
      referenceDays: [],
      fit: null,
      goOn: (fraction) => told.push(fraction) > 0,
    });
    expect(told).toEqual([0, 1]);
  });
});
