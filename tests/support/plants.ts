import type { Outputs } from '../../shared-types/engine.ts';
import type { Site } from '../../shared-types/site.ts';
import { type Account, emptyAccount } from '../../sim/plant/account.ts';
import { advance } from '../../sim/plant/advance.ts';
import type { Fault } from '../../sim/plant/faults.ts';
import type { PlantState } from '../../sim/plant/state.ts';
import { rowKg } from '../../sim/plant/water.ts';
import type { Conditions } from '../../sim/weather/conditions.ts';
import { demoContent, siteOf } from './sites.ts';

/** Every way in which a pan is plumbed, let out and emptied. */
export const plumbings: readonly (readonly [Site['plumbing'], Site['outlet'], Site['drain']])[] = [
  ['open-store', 'low', 'pump-stop'],
  ['open-store', 'low', 'drain-valve'],
  ['open-store', 'high-with-low-drain', 'drain-valve'],
  ['open-store', 'high-with-low-drain', 'drain-pump'],
  ['open-store', 'corner', 'none'],
  ['reservoir', 'low', 'pump-stop'],
  ['reservoir', 'high-with-low-drain', 'drain-valve'],
  ['reservoir', 'high-with-low-drain', 'drain-pump'],
];

export function plumbedSite(plumbing: Site['plumbing'], outlet: Site['outlet'], drain: Site['drain']): Site {
  return siteOf(demoContent({ plumbing, outlet, drain }));
}

export const pumping: Outputs = {
  pumpFraction: 1,
  drainOpen: false,
  drainPumpOn: false,
  exchangerPumpOn: true,
};
export const emptying: Outputs = {
  pumpFraction: 0,
  drainOpen: true,
  drainPumpOn: true,
  exchangerPumpOn: false,
};
export const resting: Outputs = { ...pumping, pumpFraction: 0, exchangerPumpOn: false };

/** Still conditions for tests that look at one thing. */
export const dullNoon: Conditions = {
  atMs: Date.UTC(2031, 5, 21, 14),
  solarHour: 10,
  sunZenithDeg: 30,
  sunAzimuthDeg: 150,
  beamWM2: 0,
  diffuseWM2: 300,
  irradianceWM2: 300,
  airC: 18,
  humidityFraction: 0.7,
  windMs: 2,
  longWaveWM2: 350,
  rainMmH: 0,
  snowMmH: 0,
};

/** The same weather with the sun from straight above. */
export function withSun(irradianceWM2: number, weather: Conditions = dullNoon): Conditions {
  return {
    ...weather,
    sunZenithDeg: 0,
    beamWM2: 0.9 * irradianceWM2,
    diffuseWM2: 0.1 * irradianceWM2,
    irradianceWM2,
  };
}

/** All water in the pan, ice included [kg]. */
export function panKg({ pan }: PlantState): number {
  return rowKg(pan.core) + rowKg(pan.edge);
}

/** Lets the same outputs and weather act for a while in steps of 5 s. @returns the sum of the steps. */
export function live(
  plant: PlantState,
  outputs: Outputs,
  durationS: number,
  weather: Conditions = dullNoon,
  faults: readonly Fault[] = [],
): Account {
  const account = emptyAccount();
  for (let s = 0; s < durationS; s += 5) advance(plant, outputs, weather, 5, faults, account);
  return account;
}
