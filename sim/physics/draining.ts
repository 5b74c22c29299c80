import { waterDensityKgM3 } from '../../controller/engine/water.ts';
import { pipeLossPa } from './friction.ts';
import { gravityMS2 } from './gravity.ts';
import { waterViscosityM2S } from './water.ts';

/** Water drains at about room temperature, unless said. */
const usualWaterC = 20;

const circleM2 = (insideM: number) => (Math.PI / 4) * insideM ** 2;

/**
 * Flow through a hole under a depth of water [kg/s].
 *
 * @param depthM - Water above the middle of the hole [m]; nothing flows at 0 and below.
 * @param insideM - Diameter of the hole [m].
 * @param dischargeCoefficient - 0.6 to 0.62 with a sharp edge, near 1 when well rounded.
 *
 * Error: some 3 % while the hole stands deep; too much once the depth is less than its diameter.
 * Source: Torricelli's law with a discharge coefficient, any textbook of hydraulics.
 */
export function orificeKgS(depthM: number, insideM: number, dischargeCoefficient: number): number {
  const velocityMs = Math.sqrt(2 * gravityMS2 * Math.max(0, depthM));
  return waterDensityKgM3(usualWaterC) * dischargeCoefficient * circleM2(insideM) * velocityMs;
}

/**
 * Time in which a basin with upright walls drains through a hole in its floor from one depth to another [s].
 *
 * t = (A / Cd a) sqrt(2/g) (sqrt h1 - sqrt h2): Torricelli's law, summed up.
 */
export function drainTimeS(
  areaM2: number,
  holeInsideM: number,
  fromM: number,
  toM: number,
  dischargeCoefficient: number,
): number {
  const holeM2 = dischargeCoefficient * circleM2(holeInsideM);
  return (areaM2 / holeM2) * Math.sqrt(2 / gravityMS2) * (Math.sqrt(fromM) - Math.sqrt(toM));
}

export interface GravityPipe {
  /** Height from the water above to the open end below. */
  readonly dropM: number;
  readonly insideM: number;
  readonly lengthM: number;
  readonly roughnessM: number;
  /** Velocity heads lost at the entrance: 0.5 with a sharp edge, 0.05 when rounded. */
  readonly entranceLoss: number;
  /** 20 °C unless said. */
  readonly waterC?: number;
}

/**
 * Flow through a pipe that its own fall keeps full [kg/s].
 *
 * The drop pays for the velocity head at the open end, for the entrance and for friction. Solved to 1e-9
 * of the flow. A pipe that draws air carries less.
 */
export function gravityFlowKgS(pipe: GravityPipe): number {
  const { dropM, insideM, entranceLoss, waterC = usualWaterC } = pipe;
  if (dropM <= 0) return 0;
  const densityKgM3 = waterDensityKgM3(waterC);
  const viscosityM2S = waterViscosityM2S(waterC);
  const neededM = (flowKgS: number) => {
    const velocityMs = flowKgS / densityKgM3 / circleM2(insideM);
    const lossPa = pipeLossPa({ ...pipe, flowKgS, densityKgM3, viscosityM2S });
    return ((1 + entranceLoss) * velocityMs ** 2) / (2 * gravityMS2) + lossPa / (densityKgM3 * gravityMS2);
  };
  let low = 0;
  let high = densityKgM3 * circleM2(insideM) * Math.sqrt(2 * gravityMS2 * dropM);
  while (high - low > 1e-10 * high) {
    const middle = (low + high) / 2;
    if (neededM(middle) < dropM) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
