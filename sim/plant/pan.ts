import type { Conditions } from '../weather/conditions.ts';
import type { Account } from './account.ts';
import type { Impairments } from './impairments.ts';
import { type LaneParts, panCells } from './parts.ts';
import { type SheetLoad, sheetLoadOf } from './sheet-load.ts';
import { snowAfter } from './snow.ts';
import { type Lane, type PlantState, panLiquidKg } from './state.ts';
import { at, cellJK, settleIce, waterJKgK } from './water.ts';

/** Share of its depth that the pan holds as liquid, 0 to 1. */
export function fillFraction(state: PlantState): number {
  return panLiquidKg(state) / state.parts.pan.fullKg;
}

/** Heats and cools the pan over one step and books what came and went. */
export function heatPan(
  state: PlantState,
  weather: Conditions,
  impairments: Impairments,
  flowFraction: number,
  dtS: number,
  account: Account,
): void {
  const { parts, pan } = state;
  const load = sheetLoadOf(state, weather, impairments, flowFraction);
  const { sheetJM2K } = parts.traits;
  const beforeJ = account.snowJ;
  heatLane(pan.core, parts.pan.core, load, sheetJM2K, dtS, account);
  heatLane(pan.edge, parts.pan.edge, load, sheetJM2K, dtS, account);
  const meltedJM2 = (account.snowJ - beforeJ) / parts.pan.sheetM2;
  state.snowKgM2 = snowAfter(state.snowKgM2, weather.snowMmH, meltedJM2, weather.airC, dtS);
  mixLanes(pan.core, pan.edge, parts.traits.laneMixingKgS * dtS);
  settleIce(pan.core);
  settleIce(pan.edge);
}

/**
 * Heats sheet and water of every cell of a lane.
 *
 * Sheet and water are solved together and implicitly: stable at any step, and the heat in the account is
 * exactly what the cell gained. Only the wet share of a cell touches; ice counts as wet.
 */
function heatLane(
  lane: Lane,
  parts: LaneParts,
  load: SheetLoad,
  sheetJM2K: number,
  dtS: number,
  account: Account,
): void {
  const { sheetC, waterC, massKg, iceKg } = lane;
  const { airC } = load;
  const airJK = load.airWM2K * parts.sheetM2 * dtS;
  const snowJK = load.snowWM2K * parts.sheetM2 * dtS;
  const sheetJK = sheetJM2K * parts.sheetM2;
  const gainJ = load.gainWM2 * parts.sheetM2 * dtS;
  let airJ = 0;
  let linerJ = 0;
  let snowJ = 0;
  for (let i = 0; i < panCells; i++) {
    const oldC = at(sheetC, i);
    const meltJK = oldC > 0 ? snowJK : 0;
    const sheetKnownJ = sheetJK * oldC + gainJ + airJK * airC;
    const waterJK = cellJK(lane, i);
    let newC: number;
    if (waterJK > 0) {
      const wet = Math.min(1, (at(massKg, i) + at(iceKg, i)) / parts.cellKg);
      const contactWM2K = oldC > at(waterC, i) ? load.warmContactWM2K : load.coldContactWM2K;
      const acrossJK = contactWM2K * parts.wettedM2 * wet * dtS;
      const linerJK = parts.linerWK * wet * dtS;
      const sheetSelfJK = sheetJK + airJK + meltJK + acrossJK;
      const waterSelfJK = waterJK + linerJK + acrossJK;
      const waterKnownJ = waterJK * at(waterC, i) + linerJK * airC;
      newC =
        (sheetKnownJ * waterSelfJK + acrossJK * waterKnownJ) /
        (sheetSelfJK * waterSelfJK - acrossJK * acrossJK);
      const newWaterC = (waterKnownJ + acrossJK * newC) / waterSelfJK;
      waterC[i] = newWaterC;
      linerJ += linerJK * (newWaterC - airC);
    } else {
      newC = sheetKnownJ / (sheetJK + airJK + meltJK);
      waterC[i] = newC;
    }
    sheetC[i] = newC;
    airJ += airJK * (newC - airC);
    snowJ += meltJK * newC;
  }
  account.airJ += airJ;
  account.linerJ += linerJ;
  account.snowJ += snowJ;
  account.gainJ += gainJ * panCells;
}

/** Lets middle and edge exchange water, cell by cell and as far as there is any. */
function mixLanes(core: Lane, edge: Lane, exchangedKg: number): void {
  const acrossJK = exchangedKg * waterJKgK;
  for (let i = 0; i < panCells; i++) {
    const coreKg = at(core.massKg, i);
    const edgeKg = at(edge.massKg, i);
    if (coreKg === 0 || edgeKg === 0) continue;
    const coreJK = cellJK(core, i);
    const edgeJK = cellJK(edge, i);
    const aboveK = at(core.waterC, i) - at(edge.waterC, i);
    const passedJK2 = (acrossJK * aboveK) / (coreJK * edgeJK + acrossJK * (coreJK + edgeJK));
    core.waterC[i] = at(core.waterC, i) - passedJK2 * edgeJK;
    edge.waterC[i] = at(edge.waterC, i) + passedJK2 * coreJK;
  }
}
