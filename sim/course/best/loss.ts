import { sheetGainWM2, sheetLossWM2K } from '../../physics/collector.ts';
import { type Parts, panCells } from '../../plant/parts.ts';
import { waterJKgK } from '../../plant/water.ts';
import type { Conditions } from '../../weather/conditions.ts';

/** So long after the last instant at which anything could be gained, all water is home [s]; a design choice. */
const homeAfterGainS = 5400;

/**
 * For each step, the share of a joule in the pan's water that leaves it until all is home, were it to stay there.
 *
 * Nowhere does heat leave the water faster than from a full pan, so that no joule loses more. Water is out as long
 * as the coldest that there may be could still be warmed, on a mild night by the air alone.
 *
 * @param coldestC - No water of the loop is colder, where it matters.
 */
export function lossFractions(
  parts: Parts,
  sky: readonly Conditions[],
  stepS: number,
  coldestC: number,
): readonly number[] {
  const lastGain = sky.findLastIndex((conditions) => gainsAt(parts, conditions, coldestC));
  const homeBy = lastGain + Math.round(homeAfterGainS / stepS);
  const fractions: number[] = [];
  let folds = 0;
  for (let step = sky.length - 1; step >= 0; step--) {
    fractions[step] = -Math.expm1(-folds);
    const conditions = sky[step] as Conditions;
    if (step <= homeBy) folds += (lossWK(parts, conditions) * stepS) / (parts.pan.fullKg * waterJKgK);
  }
  return fractions;
}

/** True when a sheet over water of this temperature would gain. */
function gainsAt({ collector }: Parts, conditions: Conditions, waterC: number): boolean {
  const { windMs, airC } = conditions;
  return sheetGainWM2(conditions, collector) > sheetLossWM2K(windMs, collector) * (waterC - airC);
}

/** From a full pan to the air [W/K]. */
function lossWK({ pan, collector, traits }: Parts, { windMs, rainMmH }: Conditions): number {
  const formWM2K = sheetLossWM2K(windMs, collector);
  const stretch = 1 / (1 - Math.min(0.8, formWM2K / traits.contactWM2K));
  const upWM2K = formWM2K * stretch + (waterJKgK / 3600) * rainMmH;
  const lane = ({ sheetM2, linerWK }: Parts['pan']['core']) => upWM2K * sheetM2 + linerWK;
  return panCells * (lane(pan.core) + lane(pan.edge));
}
