import type { Outputs } from '../../shared-types/engine.ts';
import type { Conditions } from '../weather/weather.ts';
import { type Account, emptyAccount } from './account.ts';
import type { Fault } from './faults.ts';
import { actuatorsOf, flowsOf } from './flows.ts';
import { moveWater } from './movement.ts';
import { heatPan } from './pan.ts';
import { followSensors } from './sensors.ts';
import { type PlantState, plantJ, plantKg } from './state.ts';
import { drawOff, exchangeHeat, mixByBuoyancy } from './store.ts';
import { loseHeat, totalKg, waterKgL } from './water.ts';

/**
 * Carries the loop through one step.
 *
 * @param dtS - Length of the step, above 0 to 60 s; 5 s or less for good shapes of fast changes. Mass and
 * energy close to rounding at any of them.
 * @returns What came in and went out of the loop in this step.
 */
export function advance(
  state: PlantState,
  outputs: Outputs,
  weather: Conditions,
  dtS: number,
  faults: readonly Fault[] = [],
): Account {
  const { parts } = state;
  const beforeJ = plantJ(state);
  const beforeKg = plantKg(state);
  const actuators = actuatorsOf(outputs, faults);
  const account = emptyAccount();
  const source = state.reservoir;
  const availableKg =
    source === null ? totalKg(state.store) - parts.store.leastKg : source.massKg - parts.reservoir.leastKg;
  const flows = flowsOf(parts, totalKg(state.pan), availableKg, actuators, faults, dtS);
  moveWater(account, state, flows, dtS);
  const pan = heatPan(state.pan, parts, weather, dtS);
  account.gainJ += pan.gainJ;
  account.airJ += pan.airJ;
  account.linerJ += pan.linerJ;
  account.pipeJ += loseHeat(state.supply, parts.pipe.lossWK, weather.airC, dtS);
  account.pipeJ += loseHeat(state.return, parts.pipe.lossWK, weather.airC, dtS);
  account.storeJ += loseHeat(state.store, parts.store.lossWK, weather.airC, dtS);
  if (source !== null) {
    account.storeJ += loseHeat([source], parts.reservoir.lossWK, weather.airC, dtS);
    const bottom = state.store[state.store.length - 1];
    // Without its pump the exchanger still passes a third by natural convection (from memory).
    const exchangerWK = parts.reservoir.exchangerWK * (actuators.exchangerPumpOn ? 1 : 0.3);
    if (bottom !== undefined) exchangeHeat(source, bottom, exchangerWK, dtS);
  }
  const drawn = drawOff(state.store, parts.store.drawnKgDay, weather.solarHour, dtS);
  account.drawnJ += drawn.drawnJ;
  account.madeUpJ += drawn.madeUpJ;
  account.drawnKg += drawn.massKg;
  account.madeUpKg += drawn.massKg;
  mixByBuoyancy(state.store);
  state.moving = {
    ...actuators,
    flowLMin: ((flows.upKg - flows.backKg) / dtS / waterKgL) * 60,
    pumpPowerW: flows.pumpPowerW,
  };
  followSensors(state, weather, dtS);
  account.heldJ = plantJ(state) - beforeJ;
  account.heldKg = plantKg(state) - beforeKg;
  return account;
}
