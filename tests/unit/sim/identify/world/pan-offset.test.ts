import { describe, expect, test } from 'vitest';
import { usualLoop } from '../../../../../sim/identify/possible-loop.ts';
import { assumedAirC } from '../../../../../sim/identify/world/assumed-air.ts';
import { panOffsetOf } from '../../../../../sim/identify/world/pan-offset.ts';
import { skyColumns } from '../../../../../sim/identify/world/sky-columns.ts';
import { type LoggedSpan, readSpan } from '../../../../../sim/identify/world/span.ts';
import { worldOf } from '../../../../../sim/identify/world/world.ts';
import { counterfactualCase } from '../../../../support/counterfactual-cases.ts';

const { logged } = counterfactualCase(2, 'least', 2);
const read = readSpan(logged.reader, logged.days.at(-1) as string);
if (!read.ok) throw new Error(read.why);
const { span } = read;

/** The same day with a thermometer of the sheet that shows so much more [K]. */
function shownWarmer(byK: number): LoggedSpan {
  const panSheetC = (span.minutes.values.panSheetC as Float64Array).map((value) => value + byK);
  return { ...span, minutes: { ...span.minutes, values: { ...span.minutes.values, panSheetC } } };
}

const offsetK = (own: LoggedSpan) => worldOf(own).panOffsetK;

describe('what the thermometer of the pan shows more than that of the store', () => {
  test('is found the larger the more it shows, and never beyond what thermometers disagree by', () => {
    const [less, plain, more] = [-0.8, 0, 0.8].map((byK) => offsetK(shownWarmer(byK))) as [
      number,
      number,
      number,
    ];
    expect(less).toBeLessThan(plain - 0.1);
    expect(more).toBeGreaterThan(plain + 0.1);
    for (const found of [less, plain, more]) expect(Math.abs(found)).toBeLessThanOrEqual(0.6);
  });

  test('is asked of the owner where two thermometers tell the sun, with what a tenth of a kelvin is worth', () => {
    const { ratedFlowLMin } = span.site.pump;
    const wattsM2 = ((0.1 * 4184 * ratedFlowLMin) / 60 / span.site.pan.wettedAreaM2).toFixed(0);
    const asked = (own: LoggedSpan) =>
      worldOf(own).remarks.filter((text) => text.includes('one bucket of water'));
    expect(asked(span)).toHaveLength(1);
    expect(asked(span)[0]).toContain(`0.1 K between two thermometers is ${wattsM2} W/m2 of sun`);
    const irradianceWM2 = new Float64Array(span.minutes.count).fill(100);
    const values = { ...span.minutes.values, irradianceWM2 };
    expect(asked({ ...span, minutes: { ...span.minutes, values } })).toEqual([]);
  });

  test('is not looked for where the sun is measured', () => {
    const sky = skyColumns(span, () => assumedAirC(span));
    const options = { traits: usualLoop.traits, steps: { factor: 0, airK: 0 }, panOffsetK: 0 };
    expect(panOffsetOf(shownWarmer(0.5), sky, options)).toBe(0);
  });
});
