import { beforeAll, describe, expect, it } from 'vitest';
import { covers, type Twin, twinOf } from '../../support/twin.ts';

/** A fit takes seconds of a free machine, and many more of a busy one. */
const timeout = 180_000;

describe('a fit of a loop whose parameters are known', { timeout }, () => {
  let honest: Twin;
  beforeAll(() => {
    honest = twinOf({ seed: 2, days: 1 });
  }, timeout);

  it('finds them within its intervals, as far as the day can tell them', () => {
    const { fit, parameters, sensors } = honest;
    expect(fit.converged).toBe(true);
    expect(parameters.length).toBeGreaterThanOrEqual(4);
    expect(parameters.filter((parameter) => !covers(parameter))).toEqual([]);
    // What all thermometers share no day can tell; the sun's sensor stands for itself.
    expect(sensors.filter(({ name }) => name === 'irradianceWM2 share').map(covers)).toEqual([true]);
    expect(fit.covariance).toHaveLength(parameters.length + sensors.length);
    // What was fitted comes first, in the order of the covariance.
    for (const [index, { name, standardError }] of parameters.entries()) {
      expect(fit.parameters[index]?.name).toBe(name);
      expect(Math.sqrt(fit.covariance[index]?.[index] as number)).toBeCloseTo(standardError, 9);
    }
    expect(
      fit.parameters.filter(({ heldBecause }) => heldBecause !== null).map(({ name }) => name),
    ).toContain('storeLossFactor');
  });

  it('misses the depth when the site file lies about it, and shows by what is left over that the area is another', () => {
    const { fit, parameters } = twinOf({
      seed: 2,
      days: 1,
      asBuilt: (site) => ({
        ...site,
        pan: { ...site.pan, waterDepthM: 0.045, grossAreaM2: 16.5, wettedAreaM2: 16 },
      }),
    });
    expect(fit.converged).toBe(true);
    expect(parameters.filter((parameter) => !covers(parameter)).map(({ name }) => name)).toContain(
      'depthFactor',
    );
    // All else is told for each square metre, as it was; the water of a larger pan leaves it warmer.
    const leftOverK = ({ residuals }: Twin['fit']) =>
      residuals.find(({ channel }) => channel === 'panOutletC')?.rms ?? Number.NaN;
    expect(leftOverK(fit)).toBeGreaterThan(5 * leftOverK(honest.fit));
  });
});
