import type { Situation } from '../../situation.ts';
import { dewPointC } from '../../sky.ts';
import { good, usable } from '../facts.ts';
import { agree, type Comparison } from './comparison.ts';

/** Light in which a thermometer that the sun shines on is well above the air [W/m2]; a design choice. */
const sunnyWM2 = 300;
/**
 * The dew point of the air changes little from night to noon, while that which follows from a heated thermometer
 * and the true humidity goes up with it. A change by more than this is no weather under a high sun [K]; a design
 * choice: a warm front brings as much within the day, but with clouds.
 */
const risenK = 7;

/** Dew point by the sensors of air and humidity [°C]; null without either. */
function dewC({ readings }: Situation): number | null {
  const airC = usable(readings.ambientC);
  const humidityFraction = good(readings.humidityFraction) ?? 0;
  return airC === null || humidityFraction <= 0 ? null : dewPointC(airC, humidityFraction);
}

/** The dew point that the night ended with [°C]: in the dark that of now, by day what it was [°C]. */
export function nightDewC(situation: Situation, darkMs: number | null): number | null {
  return darkMs === null ? situation.state.watch.nightDewC : dewC(situation);
}

/** Air that grows more humid as the sun shines is measured in the sun. */
export const airInTheSun: Comparison = {
  name: 'air-in-the-sun',
  looks: 30,
  looksToClear: 1440,
  judge: (situation, darkMs) => {
    const { readings, state } = situation;
    const beforeC = state.watch.nightDewC;
    const sunWM2 = good(readings.irradianceWM2) ?? 0;
    if (beforeC === null || darkMs !== null || sunWM2 < sunnyWM2) return null;
    const nowC = dewC(situation);
    if (nowC === null) return null;
    return nowC - beforeC > risenK ? ['ambientC'] : agree;
  },
};
