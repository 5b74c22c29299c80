import { describe, expect, it } from 'vitest';
import type { SweepPoint } from '../../../../../shared-types/tuning.ts';
import { advise } from '../../../../../sim/replay/sweep/advise.ts';

const heatJ = 3.6e8;

/** A set that brings `gain` more heat than the settings in force, give or take `half`. */
function point(gain: number, half: number, rest: Partial<SweepPoint> = {}): SweepPoint {
  const estimate = (value: number) => ({ value, low: value - half, high: value + half });
  return {
    change: { startDifferenceK: 4 },
    heatHomeJ: estimate(heatJ + gain),
    heatGainJ: estimate(gain),
    electricityJ: 1e6,
    starts: 10,
    fills: 4,
    aboveFreezingK: 5,
    mostIceKg: 0,
    belowLinerLimitK: 20,
    beyondLogS: 0,
    onFront: true,
    ...rest,
  };
}
const base = point(0, 0, { change: {} });

describe('advice of a sweep', () => {
  it('takes what surely brings more', () => {
    const { point: index, text } = advise([base, point(3.6e6, 1e6), point(7.2e6, 1.8e6)]);
    expect(index).toBe(2);
    expect(text).toBe(
      'Advised: Start difference 4 K. It brings 2.00 kWh more (1.50 to 2.50 kWh), 2.0 % of the heat, with 10 starts instead of 10 and 4 fills instead of 4.',
    );
  });

  it('leaves things as they are when the band of the gain holds nothing as well', () => {
    expect(advise([base, point(3.6e6, 3.6e6)])).toEqual({
      point: 0,
      text: 'Leave the settings as they are: the most that others gain is 1.00 kWh, and by what is known of the loop that may be nothing.',
    });
    expect(advise([base, point(3.6e6, 3.6e6 - 1)]).point).toBe(1);
  });

  it('leaves things as they are for less than half a hundredth of the heat', () => {
    expect(advise([base, point(0.005 * heatJ, 0)]).point).toBe(1);
    const { point: index, text } = advise([base, point(0.005 * heatJ - 1, 0)]);
    expect(index).toBe(0);
    expect(text).toContain('less than the 0.50 kWh that a change is worth');
  });

  it('leaves things as they are when nothing brings more, and when there is nothing else', () => {
    expect(advise([base, point(0, 0), point(-5, 1)]).text).toContain('none of the others brings more heat');
    expect(advise([base]).text).toContain('nothing else could be tried');
  });

  it('names the one that gains most when it says why not', () => {
    expect(advise([base, point(1e6, 2e6), point(3.6e6, 9e6), point(2e6, 9e6)]).text).toContain('1.00 kWh');
  });

  it('prefers fewer starts and fills among those of equal heat', () => {
    const equal = 0.005 * heatJ;
    const less = point(9e6 - equal, 0, { starts: 8, fills: 4 });
    expect(advise([base, point(9e6, 0), less]).point).toBe(2);
    const worse = point(9e6 - equal - 1, 0, { starts: 1, fills: 1 });
    expect(advise([base, point(9e6, 0), worse]).point).toBe(1);
    const fills = point(9e6 - equal, 0, { starts: 10, fills: 3 });
    expect(advise([base, fills, point(9e6, 0)]).point).toBe(1);
  });

  it('then prefers less electricity, then more heat', () => {
    expect(advise([base, point(9e6, 0), point(8.5e6, 0, { electricityJ: 9e5 })]).point).toBe(2);
    expect(advise([base, point(8.5e6, 0), point(9e6, 0)]).point).toBe(2);
    expect(advise([base, point(9e6, 0), point(9e6, 0)]).point).toBe(1);
  });

  it.each(['aboveFreezingK', 'belowLinerLimitK'] as const)(
    'never takes what comes nearer by %s',
    (margin) => {
      const held = base[margin] as number;
      expect(advise([base, point(9e6, 0, { [margin]: held - 0.5 })]).point).toBe(1);
      const { point: index, text } = advise([base, point(9e6, 0, { [margin]: held - 0.501 })]);
      expect(index).toBe(0);
      expect(text).toContain("nearer to frost or to the liner's limit by more than 0.5 K");
      const both = advise([base, point(9e6, 0, { [margin]: held - 1 }), point(8e6, 0)]);
      expect(both.point).toBe(2);
      expect(both.text).toContain('Left aside: 1 that');
    },
  );

  it.each([0, 40])('never takes what freezes more of the pan, where %d kg are frozen now', (mostIceKg) => {
    const now = { ...base, aboveFreezingK: 0, mostIceKg };
    const iced = (iceKg: number) => point(9e6, 0, { aboveFreezingK: 0, mostIceKg: iceKg });
    expect(advise([now, iced(mostIceKg)]).point).toBe(1);
    expect(advise([now, iced(mostIceKg + 0.09)]).point).toBe(1);
    const { point: index, text } = advise([now, iced(mostIceKg + 0.11)]);
    expect(index).toBe(0);
    expect(text).toContain('or freezes more of the pan');
    const both = advise([now, iced(mostIceKg + 30), point(8e6, 0)]);
    expect(both.point).toBe(2);
    expect(both.text).toContain('or freeze more of the pan');
  });

  it('says for how long the log cannot vouch, from an hour on', () => {
    const said = (beyondLogS: number) => advise([base, point(9e6, 0, { beyondLogS })]).text;
    expect(said(3599)).not.toContain('vouch');
    expect(said(3600)).toContain(
      '4 fills instead of 4. For 1.0 h the log cannot vouch: the loop would have gone where it never was.',
    );
  });

  it('tells no share of heat that was none', () => {
    const cold = { ...base, heatHomeJ: { value: 0, low: 0, high: 0 } };
    const { point: index, text } = advise([cold, point(9e6, 0)]);
    expect(index).toBe(1);
    expect(text).toContain('2.50 kWh more (2.50 to 2.50 kWh), with 10 starts');
  });

  it('asks of a margin that arises anew that it is one', () => {
    const dry = { ...base, aboveFreezingK: null };
    expect(advise([dry, point(9e6, 0, { aboveFreezingK: 0 })]).point).toBe(1);
    expect(advise([dry, point(9e6, 0, { aboveFreezingK: -0.1 })]).point).toBe(0);
    expect(advise([base, point(9e6, 0, { aboveFreezingK: null })]).point).toBe(1);
  });
});
