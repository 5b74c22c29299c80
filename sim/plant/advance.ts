import type { Outputs } from '../../shared-types/engine.ts';
import type { Conditions } from '../weather/conditions.ts';
import { type Account, emptyAccount } from './account.ts';
import { drawnShareH, wantedKgS } from './draws.ts';
import { exchangeHeat } from './exchanger.ts';
import { type Fault, partFault } from './faults.ts';
import { actuatorsOf, impairmentsOf } from './impairments.ts';
import { moveWater } from './movement.ts';
import { fillFraction, heatPan } from './pan.ts';
import type { Parts } from './parts.ts';
import { takeFromEnd } from './row.ts';
import { followSensors } from './sensors.ts';
import type { PlantState } from './state.ts';
import { conductAndLose, drawOff, evenLayers, mixByBuoyancy, spill } from './store.ts';
import { at, loseHeat, type Row, rowKg, settleIce, waterJKgK, waterKgL } from './water.ts';

const noFaults: readonly Fault[] = [];

/**
 * Carries the loop through one step, in place.
 *
 * @param dtS - Length of the step, above 0 to 60 s; 10 s or less for good shapes of fast changes. Mass and
 * energy close to rounding at any of them.
 * @param account - A running sum that the step is added to; a new one when absent.
 * @returns That account.
 */
export function advance(
  state: PlantState,
  outputs: Outputs,
  weather: Conditions,
  dtS: number,
  faults: readonly Fault[] = noFaults,
  account: Account = emptyAccount(),
): Account {
  const { parts } = state;
  const actuators = actuatorsOf(outputs, faults);
  const impairments = impairmentsOf(faults);
  const snowed = partFault(faults, 'sheet-snowed');
  // Snow of a fault lies there once, in the step in which the fault comes.
  if (snowed !== undefined && snowed.forS < dtS) state.snowKgM2 += snowed.size;
  loseReservoirWater(state, impairments.reservoirLostFraction, account);
  const moved = moveWater(state, actuators, impairments, weather.airC, dtS, account);
  letAirOut(state, moved.liftedKg, dtS);
  const flowKgS = moved.liftedKg / dtS;
  heatPan(state, weather, impairments, flowKgS / parts.pump.ratedKgS, dtS, account);
  account.homeJ += exchangeHeat(state, actuators.exchangerPumpOn, dtS);
  draw(state, weather, dtS, account);
  cool(state, weather.airC, dtS, account);
  state.moving = {
    pumpFraction: actuators.pumpFraction,
    drainOpen: actuators.drainOpen,
    drainPumpOn: actuators.drainPumpOn,
    exchangerPumpOn: actuators.exchangerPumpOn,
    flowLMin: (flowKgS / waterKgL) * 60,
    pumpPowerW: moved.pumpPowerW,
  };
  followSensors(state, weather, dtS, faults);
  return account;
}

/** Below this share of its water the pan takes in air; above, the flow lets it out with this time constant. */
const airEntersBelow = 0.05;
const airLeavesS = 600;

function letAirOut(state: PlantState, liftedKg: number, dtS: number): void {
  const { pan } = state.parts;
  if (fillFraction(state) < airEntersBelow) state.airFraction = pan.airAtFirstFraction;
  else if (liftedKg > 0)
    state.airFraction += (pan.airKeptFraction - state.airFraction) * -Math.expm1(-dtS / airLeavesS);
}

/** A drain-back loop that has lost water: as much of it as is missing is taken from the reservoir. */
function loseReservoirWater(state: PlantState, lostFraction: number, account: Account): void {
  const { reservoir, pan, supply, return: home, parts } = state;
  if (reservoir === null || lostFraction === 0) return;
  const elsewhereKg = rowKg(pan.core) + rowKg(pan.edge) + rowKg(supply) + rowKg(home);
  const heldKg = at(reservoir.massKg, 0);
  const excessKg = heldKg + elsewhereKg - (1 - lostFraction) * parts.reservoir.startKg;
  const leakedKg = Math.min(heldKg, Math.max(0, excessKg));
  account.leakedKg += leakedKg;
  account.leakedJ += takeFromEnd(reservoir, leakedKg, true) * waterJKgK;
}

/** Pipes, store and reservoir lose heat to the air. */
function cool(state: PlantState, airC: number, dtS: number, account: Account): void {
  const { parts, reservoir } = state;
  account.pipeJ +=
    coolPipe(state.supply, parts.pipe, airC, dtS) + coolPipe(state.return, parts.pipe, airC, dtS);
  account.storeJ += conductAndLose(state, airC, dtS);
  if (reservoir !== null) account.storeJ += loseHeat(reservoir, parts.reservoir.lossWK, airC, dtS);
}

/** A pipe loses heat as far as it holds water. */
function coolPipe(pipe: Row, { lossWK, fullKg }: Parts['pipe'], airC: number, dtS: number): number {
  const heldKg = rowKg(pipe);
  if (heldKg === 0) return 0;
  const lostJ = loseHeat(pipe, (lossWK * heldKg) / fullKg, airC, dtS);
  settleIce(pipe);
  return lostJ;
}

function wantedAtTapKg(parts: Parts, weather: Conditions, dtS: number): number {
  const { draw: habit, drawCourse, drawnKgDay } = parts;
  return drawCourse === null
    ? drawnKgDay * drawnShareH(habit, weather.solarHour) * (dtS / 3600)
    : wantedKgS(drawCourse, weather.atMs) * dtS;
}

/** Hot water out, cold water in, the layers put in order. */
function draw(state: PlantState, weather: Conditions, dtS: number, account: Account): void {
  const { parts, store } = state;
  const wantedKg = wantedAtTapKg(parts, weather, dtS);
  const drawn = drawOff(state, wantedKg);
  evenLayers(store);
  const over = spill(state);
  if (over.massKg > 0) evenLayers(store);
  mixByBuoyancy(store);
  account.drawnJ += drawn.drawnJ;
  account.madeUpJ += drawn.madeUpJ;
  account.drawnKg += drawn.massKg;
  account.madeUpKg += drawn.massKg;
  account.overflowKg += over.massKg;
  account.overflowJ += over.massKgC * waterJKgK;
}
