import { describe, expect, it } from 'vitest';
import type { Survey } from '../../../../sim/survey/report.ts';
import { figureText, surveyText } from '../../../../sim/survey/report-text.ts';
import { surveyOf } from '../../../../sim/survey/survey.ts';
import { plumbings } from '../../../support/plants.ts';
import { demoContent, type SiteContent, siteOf } from '../../../support/sites.ts';

const section = (name: string, changes: SiteContent) => ({
  [name]: { ...(demoContent()[name] as object), ...changes },
});
const survey = (changes: SiteContent = {}) => surveyOf(siteOf(demoContent(changes)));
const warned = (changes: SiteContent = {}) => survey(changes).warnings.map(({ code }) => code);

function figure({ sections }: Survey, name: string): number {
  const found = sections.flatMap(({ figures }) => figures).find((candidate) => candidate.name === name);
  if (found === undefined) throw new Error(`no figure '${name}'`);
  return found.value ?? Number.NaN;
}

describe('survey of the demo', () => {
  const demo = survey();

  it('refuses nothing', () => {
    expect(demo.refusals).toEqual([]);
  });

  it('tells what 40 mm of water weigh on 12 m2', () => {
    expect(figure(demo, 'Load of that water')).toBeCloseTo(39.928, 3);
    expect(figure(demo, 'Water in the full pan')).toBeCloseTo(12 * 39.928, 3);
    expect(figure(demo, 'Load with water up to the wall')).toBeCloseTo(99.82, 6);
    expect(demo.warnings.map(({ code }) => code)).toContain('roof-load');
  });

  it('finds the rated flow in the loop, and its velocity in 25 mm', () => {
    expect(Math.abs(figure(demo, 'Flow through the full loop') - 24)).toBeLessThan(0.3);
    const velocityMs = figure(demo, 'Flow through the full loop') / 60_000 / ((Math.PI / 4) * 0.025 ** 2);
    expect(figure(demo, 'Velocity in the return pipe')).toBeCloseTo(velocityMs, 9);
  });

  it('fills pan and supply pipe within the times that its least and most flow allow', () => {
    const filledL = 0.995 * 480 + 3.04;
    const seconds = figure(demo, 'Fill time');
    expect(seconds).toBeGreaterThan((filledL / figure(demo, 'Flow while filling, most')) * 60 - 2);
    expect(seconds).toBeLessThan((filledL / figure(demo, 'Flow while filling, least')) * 60 + 2);
  });

  it('puts the time constant together from capacity and loss', () => {
    for (const wind of ['1', '4'])
      expect(figure(demo, `Time constant at ${wind} m/s`)).toBeCloseTo(
        figure(demo, 'Heat capacity') / 3.6 / figure(demo, `Loss at ${wind} m/s`),
        9,
      );
    expect(figure(demo, 'Heat capacity')).toBeCloseTo(167.059 + 3.8465 * ((12 + 0.909 * 0.4) / 12), 2);
    // 3.5 J/m3K over 3 m/s; the rim of 29 mm brings 0.909 of its 0.4 m2, by hand.
    const windWM2K = 10.5 * ((12 + 0.909 * 0.4) / 12);
    expect(figure(demo, 'Loss at 4 m/s') - figure(demo, 'Loss at 1 m/s')).toBeCloseTo(windWM2K, 2);
  });

  it('has a dry sheet that is hotter than a full pan, and colder than the air at night', () => {
    expect(figure(demo, 'Dry sheet, highest')).toBeGreaterThan(figure(demo, 'Full pan without flow'));
    expect(figure(demo, 'Dry sheet, lowest')).toBeLessThan(0);
    expect(figure(demo, 'Frost on the dry sheet from air of')).toBeGreaterThan(3);
    expect(figure(demo, 'Full pan from 10 to 0 C')).toBeGreaterThan(2);
  });

  it('hands on a fair share of the heat', () => {
    const fraction = figure(demo, "Efficiency factor F'");
    expect(fraction).toBeGreaterThan(0.9);
    expect(fraction).toBeLessThan(1);
    expect(figure(demo, 'Heat removal factor FR')).toBeCloseTo(
      fraction * figure(demo, "Flow factor F''"),
      12,
    );
  });
});

describe('every plumbing', () => {
  it.each(plumbings)(
    '%s, %s, %s has figures with unit and reason, none of them lost',
    (plumbing, outlet, drain) => {
      const told = survey({ plumbing, outlet, drain });
      for (const { name, value, unit, why } of told.sections.flatMap(({ figures }) => figures)) {
        expect(value === null || Number.isFinite(value), name).toBe(true);
        expect(unit.length * why.length, name).toBeGreaterThan(0);
      }
      expect(told.refusals).toEqual([]);
      expect(JSON.parse(JSON.stringify(told))).toEqual(told);
    },
  );

  const withPipe = (pipeInsideMm: number, changes: SiteContent = {}) =>
    surveyOf(siteOf(demoContent(changes)), { traits: { pipeInsideMm } }).warnings.map(({ code }) => code);

  it('warns of a return pipe too wide for its air to be carried away', () => {
    expect(withPipe(50)).toContain('no-siphon');
    expect(withPipe(32)).toContain('siphon-doubtful');
    expect(withPipe(25).filter((code) => /^(no-siphon|siphon-doubtful)$/.test(code))).toEqual([]);
  });

  it('warns of a flow that the pump does not reach through such pipes', () => {
    const weak = section('pump', { ratedHeadM: 2.4 });
    expect(withPipe(16, weak)).toContain('flow-below-rated');
    expect(withPipe(25, weak)).not.toContain('flow-below-rated');
  });

  it('warns of a pan that cannot be emptied', () => {
    expect(warned({ outlet: 'corner', drain: 'none' })).toContain('no-drain');
    expect(warned()).not.toContain('no-drain');
    expect(warned({ outlet: 'corner', drain: 'none', ...section('store', { headroomL: 20 }) })).not.toContain(
      'headroom',
    );
  });
});

const pump = (changes: SiteContent) => section('pump', changes);
const settings = (changes: SiteContent) => section('settings', changes);
const sheetOnly = { panSheetC: { topic: 'a', unit: 'C' }, storeBottomC: { topic: 'b', unit: 'C' } };

describe('warnings', () => {
  const rows: readonly (readonly [string, SiteContent, SiteContent])[] = [
    [
      'siphon-suction',
      section('pan', { heightAboveStoreM: 0.8 }),
      section('pan', { heightAboveStoreM: 0.4 }),
    ],
    ['fill-timeout', settings({ fillTimeS: 900, fillTimeoutS: 1300 }), settings({ fillTimeoutS: 2000 })],
    [
      'fill-time',
      { sensors: sheetOnly, ...settings({ fillTimeS: 1300 }) },
      { sensors: sheetOnly, ...settings({ fillTimeS: 1400 }) },
    ],
    ['drain-time', settings({ drainTimeS: 500 }), settings({ drainTimeS: 600 })],
    ['slope', section('pan', { heightAboveStoreM: 0.09 }), section('pan', { heightAboveStoreM: 0.12 })],
    [
      'return-uphill',
      { drain: 'drain-pump', ...section('pan', { heightAboveStoreM: -0.3 }) },
      { drain: 'drain-pump' },
    ],
    ['headroom', section('store', { headroomL: 482 }), section('store', { headroomL: 490 })],
    ['dry-liner', section('pan', { linerLimitC: 90 }), section('pan', { linerLimitC: 100 })],
    ['wet-liner', section('pan', { linerLimitC: 90 }), section('pan', { linerLimitC: 95 })],
    [
      'start-difference',
      settings({ stopDifferenceK: 0.5 }),
      settings({ startDifferenceK: 9.9, stopDifferenceK: 0.5 }),
    ],
  ];
  it.each(rows)('%s comes with %o and goes with %o', (code, wrong, right) => {
    expect(warned(wrong)).toContain(code);
    expect(warned(right)).not.toContain(code);
  });
});

it('leaves the fill time alone where a sensor proves the fill', () => {
  expect(warned(settings({ fillTimeS: 1300 }))).not.toContain('fill-time');
});

describe('refusals', () => {
  it('name the pump that cannot lift, with both heights', () => {
    const told = survey(pump({ ratedHeadM: 1 }));
    expect(told.refusals.map(({ code }) => code)).toEqual(['pump-cannot-lift']);
    expect(surveyText(told)).toMatch(/Cannot be built\n {2}pump-cannot-lift: .*1\.33 m at no flow.*2\.12 m/);
  });

  it('name a pan that runs out as fast as it is filled', () => {
    // The free outlet passes 0.6 of the rated flow; a pump just able to lift brings less.
    const weak = { outlet: 'low', drain: 'pump-stop', ...pump({ ratedHeadM: 1.7, ratedFlowLMin: 60 }) };
    const told = survey(weak);
    expect(told.refusals.map(({ code }) => code)).toEqual(['never-full']);
    expect(figureText(null)).toBe('never');
  });
});

describe('numbers for people', () => {
  it.each([
    [1365.6, '1366'],
    [479.1, '479'],
    [0.02262, '0.0226'],
    [0, '0'],
    [-5.437, '-5.44'],
  ])('%d is written %s', (value, text) => {
    expect(figureText(value)).toBe(text);
  });
});
