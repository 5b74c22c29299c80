import { safeOutputs } from '../../controller/engine/index.ts';
import { localDaysOf } from '../../controller/log/local-day.ts';
import { inputOf } from '../loop.ts';
import { emptyAccount } from '../plant/account.ts';
import { advance } from '../plant/advance.ts';
import { fillFraction } from '../plant/pan.ts';
import { readSensors } from '../plant/sensors.ts';
import { harvestJ, outsideJ } from './harvest.ts';
import type { Policy } from './policy.ts';
import type { Run } from './runs.ts';

/** What a policy made of a run. */
export interface Result {
  readonly harvestJ: number;
  readonly electricityJ: number;
  readonly fills: number;
  readonly starts: number;
  /** Highest temperature of the top of the store [°C]. */
  readonly hottestStoreC: number;
}

/** Step of plant and policy [s]. */
const stepS = 10;
/** A pan that was as good as empty and now is half full counts as filled. */
const emptyFraction = 0.1;
const filledFraction = 0.5;

/** Lets a policy run a loop through its day, with the sensors' own errors. The same arguments give the same result. */
export function runPolicy(run: Run, policy: Policy): Result {
  const { weather, seed, fromMs, toMs } = run;
  const plant = run.plant();
  const account = emptyAccount();
  const outsideAtFirstJ = outsideJ(plant);
  const localDay = localDaysOf(run.site.timeZone).dayOf(fromMs);
  let outputs = safeOutputs;
  let fills = 0;
  let starts = 0;
  let wasEmpty = true;
  let hottestStoreC = Number.NEGATIVE_INFINITY;

  function live(atMs: number, dtS: number, elapsedMs: number | null): void {
    const before = outputs.pumpFraction;
    advance(plant, outputs, weather.at(atMs), dtS, undefined, account);
    outputs = policy(inputOf(plant, readSensors(plant, seed), atMs, elapsedMs, localDay));
    if (before === 0 && outputs.pumpFraction > 0) starts++;
    const filling = fillFraction(plant);
    if (filling < emptyFraction) wasEmpty = true;
    else if (wasEmpty && filling > filledFraction) {
      wasEmpty = false;
      fills++;
    }
    hottestStoreC = Math.max(hottestStoreC, plant.store.waterC[0] ?? hottestStoreC);
  }

  // A first look wires the sensors; a millisecond changes nothing else.
  live(fromMs, 0.001, null);
  for (let atMs = fromMs + stepS * 1000; atMs <= toMs; atMs += stepS * 1000) live(atMs, stepS, stepS * 1000);
  const { electricityJ } = account;
  return { harvestJ: harvestJ(account, plant, outsideAtFirstJ), electricityJ, fills, starts, hottestStoreC };
}
