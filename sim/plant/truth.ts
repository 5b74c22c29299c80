import { channels } from '../../shared-types/channels.ts';
import type { Conditions } from '../weather/conditions.ts';
import { numberOf } from './makes.ts';
import { panCells, pipeNodes, storeLayers } from './parts.ts';
import type { PlantState } from './state.ts';
import { at, column, rowKg, sum } from './water.ts';

/** Below this share of a full cell its thermometer comes out of the water. */
const wetFraction = 0.1;
const middleCell = panCells >> 1;
const lastCell = panCells - 1;
const lastNode = pipeNodes - 1;
const middleLayer = storeLayers >> 1;
const lastLayer = storeLayers - 1;

/** Work space; whoever asks for truths reads it before the next question. */
const truths = column(channels.length, 0);

/**
 * The true value at every channel's place, in the channel's unit and in the order of the list of channels.
 * Without a reservoir its thermometer reads the store, and its level is nought. Overwritten by the next call.
 */
export function trueValues(state: PlantState, weather: Conditions): readonly number[] {
  const { parts, store, reservoir, moving } = state;
  const { waterC } = store;
  truths[numberOf.panOutletC] = panWaterC(state, lastCell, weather.airC);
  truths[numberOf.panSheetC] = at(state.pan.core.sheetC, middleCell);
  truths[numberOf.panInletC] = inletC(state, weather.airC);
  truths[numberOf.storeBottomC] = at(waterC, lastLayer);
  truths[numberOf.storeMiddleC] = at(waterC, middleLayer);
  truths[numberOf.storeTopC] = at(waterC, 0);
  truths[numberOf.reservoirC] = reservoir === null ? at(waterC, lastLayer) : at(reservoir.waterC, 0);
  truths[numberOf.ambientC] = weather.airC;
  truths[numberOf.irradianceWM2] = weather.irradianceWM2;
  truths[numberOf.windMs] = weather.windMs;
  truths[numberOf.humidityFraction] = weather.humidityFraction;
  truths[numberOf.longWaveWM2] = weather.longWaveWM2;
  truths[numberOf.flowLMin] = moving.flowLMin;
  truths[numberOf.panLevelMm] = panLevelMm(state);
  truths[numberOf.storeLevelMm] = (sum(store.massKg) / parts.store.brimKg) * parts.store.heightM * 1000;
  truths[numberOf.reservoirLevelMm] =
    reservoir === null
      ? 0
      : (at(reservoir.massKg, 0) / parts.reservoir.startKg) * parts.reservoir.heightM * 1000;
  truths[numberOf.pumpPowerW] = moving.pumpPowerW;
  return truths;
}

/** Mean depth of what stands in the pan, ice included. */
function panLevelMm({ pan, parts }: PlantState): number {
  return ((rowKg(pan.core) + rowKg(pan.edge)) / parts.pan.fullKg) * parts.pan.depthM * 1000;
}

/** Water that comes through the supply pipe; when that stands empty, whatever is in the pan behind it. */
function inletC(state: PlantState, airC: number): number {
  const { supply } = state;
  const inPipe = at(supply.massKg, lastNode) > 0.5 * (state.parts.pipe.fullKg / pipeNodes);
  return inPipe ? at(supply.waterC, lastNode) : panWaterC(state, 0, airC);
}

/** Mixed water of both lanes; a place that falls dry shows half the sheet and half the air. */
function panWaterC({ pan: { core, edge }, parts }: PlantState, cell: number, airC: number): number {
  const coreKg = at(core.massKg, cell) + at(core.iceKg, cell);
  const edgeKg = at(edge.massKg, cell) + at(edge.iceKg, cell);
  const heldKg = coreKg + edgeKg;
  const wet = Math.min(1, heldKg / (wetFraction * (parts.pan.fullKg / panCells)));
  const dryC = 0.5 * (at(core.sheetC, cell) + airC);
  if (heldKg === 0) return dryC;
  const waterC = (coreKg * at(core.waterC, cell) + edgeKg * at(edge.waterC, cell)) / heldKg;
  return wet * waterC + (1 - wet) * dryC;
}
