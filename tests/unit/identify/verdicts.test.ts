import { describe, expect, it } from 'vitest';
import type { FittedParameter } from '../../../shared-types/tuning.ts';
import type { Stretch } from '../../../sim/identify/model/stretch.ts';
import { heldWords, type Seen, verdictsOf } from '../../../sim/identify/verdicts.ts';

interface Day {
  readonly sunMeasured?: boolean;
  readonly irradianceWM2?: number;
  readonly speeds?: readonly number[];
}

const seen = (
  { sunMeasured = true, irradianceWM2 = 800, speeds = [0, 0.5, 1] }: Day,
  rest: Partial<Seen> = {},
) => {
  const stretch = {
    sunMeasured,
    conditions: [{ irradianceWM2: 0 }, { irradianceWM2 }],
    span: { minutes: { values: {}, drives: speeds.map((pumpFraction) => [{ outputs: { pumpFraction } }]) } },
  };
  return { stretches: [stretch as unknown as Stretch], windMeasured: true, allTheSun: false, ...rest };
};

const nothingMore = 'the days tell no more of it than was known before';

describe('why a trait is held', () => {
  it.each([
    ['opticalEfficiency', { sunMeasured: false }, 'the sun was not measured'],
    ['windOpticalSM', { sunMeasured: false }, 'the sun was not measured'],
    ['opticalEfficiency', { irradianceWM2: 250 }, 'there was hardly any sun'],
    ['opticalEfficiency', { irradianceWM2: 251 }, nothingMore],
    ['stillLossWM2K', { sunMeasured: false, irradianceWM2: 0 }, nothingMore],
    ['flowFactor', { speeds: [0] }, 'the pump never ran'],
    ['contactWM2K', { speeds: [0, 0.004] }, 'the pump never ran'],
    ['contactWM2K', { speeds: [0, 0.01] }, nothingMore],
    ['depthFactor', { speeds: [0] }, nothingMore],
  ] as const)('%s on a day %j: %s', (name, day, words) => {
    expect(heldWords(name, seen(day))).toBe(words);
  });

  it('is that all the sun is gathered, where it is: the efficiency alone', () => {
    const all = seen({}, { allTheSun: true });
    expect(heldWords('opticalEfficiency', all)).toContain('gathers all the sun');
    expect(heldWords('windOpticalSM', all)).toBe(nothingMore);
  });
});

const parameter = (
  name: string,
  standardError: number | null,
  heldBecause: string | null = null,
): FittedParameter => ({
  name,
  unit: name === 'opticalEfficiency' ? '1' : 'W/m2K',
  value: 0.905,
  standardError,
  heldBecause,
});
const usual = 'Sensors are taken to lag as their make does; what is quicker than a minute is not looked at.';
const left = { channel: 'panSheetC', samples: 100, mean: 0, rms: 0.1234 };

describe('what the days tell, in words', () => {
  it('is little where all is measured and told', () => {
    expect(verdictsOf([parameter('stillLossWM2K', 1)], [[1]], [], seen({}))).toEqual([usual]);
  });

  it('names what is held, with its unit where it has one, and why', () => {
    const held = [parameter('opticalEfficiency', null, 'of this'), parameter('contactWM2K', null, 'of that')];
    expect(verdictsOf(held, [], [], seen({})).slice(0, 2)).toEqual([
      'opticalEfficiency is held at 0.905: of this.',
      'contactWM2K is held at 0.905 W/m2K: of that.',
    ]);
  });

  it('says what sensors are missing, and that one speed is one speed', () => {
    const words = verdictsOf(
      [],
      [],
      [],
      seen({ sunMeasured: false, speeds: [0, 1] }, { windMeasured: false }),
    );
    expect(words).toHaveLength(4);
    expect(words[0]).toContain('Where the wind was not measured');
    expect(words[1]).toContain('only the dark hours');
    expect(words[2]).toContain('one speed only');
  });

  it.each([
    [0.9, true],
    [-0.95, true],
    [0.89, false],
  ])('names two that are known together with a correlation of %f: %s', (correlation, named) => {
    const both = [parameter('stillLossWM2K', 2), parameter('depthFactor', null), parameter('contactWM2K', 3)];
    const covariance = [
      [4, 6 * correlation],
      [6 * correlation, 9],
    ];
    const words = verdictsOf(both, covariance, [], seen({})).filter((text) => text.includes('together'));
    const text = `stillLossWM2K and contactWM2K are known together only: correlation ${correlation.toFixed(2)}.`;
    expect(words).toEqual(named ? [text] : []);
  });

  it.each([
    [0.5, -2, true],
    [0.49, -5, false],
    [0.9, -1.9, false],
  ])(
    'says what lasts longer than ten minutes: correlation %f, runs %f, %s',
    (lagOneCorrelation, runsZ, told) => {
      const words = verdictsOf([], [], [{ ...left, lagOneCorrelation, runsZ }], seen({}));
      expect(words.some((text) => text.includes('what is left over (0.12) lasts longer'))).toBe(told);
    },
  );
});
