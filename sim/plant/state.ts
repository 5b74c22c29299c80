import type { Channel } from '../../shared-types/channels.ts';
import type { Site } from '../../shared-types/site.ts';
import type { Actuators } from './flows.ts';
import { type PanCell, sheetJ } from './pan.ts';
import { type Parts, panCells, partsOf, pipeNodes, storeLayers } from './parts.ts';
import { type Cell, totalJ, totalKg } from './water.ts';

/** A sensor between readings. */
interface SensorState {
  /** What its lagging body has come to, in the channel's unit. */
  bodyValue: number;
  /** The value it last gave. */
  shownValue: number;
}

/** The whole simulated loop as plain data. `advance` changes it in place. */
export interface PlantState {
  readonly parts: Parts;
  readonly pan: PanCell[];
  /** From the pump to the pan, and from the pan to the store. */
  readonly supply: Cell[];
  readonly return: Cell[];
  /** Layers from top to bottom. */
  readonly store: Cell[];
  /** The drain-back reservoir; null in an open-store loop. */
  readonly reservoir: Cell | null;
  /** What pump and drain did in the newest step. */
  moving: Actuators & { readonly flowLMin: number; readonly pumpPowerW: number };
  readonly sensors: Partial<Record<Channel, SensorState>>;
  /** Readings taken so far; picks the noise of the next one. */
  readingCount: number;
}

export interface PlantOptions {
  /** Temperature of store and pipes at the start, -20 to 95 °C. */
  readonly waterC: number;
  /** Temperature of sheet and, if it is full, pan at the start. */
  readonly panC: number;
  readonly panFull?: boolean;
}

/** A loop at rest. A full pan takes its water from the store, or from the reservoir. */
export function createPlant(site: Site, options: PlantOptions): PlantState {
  const parts = partsOf(site);
  const inPanKg = options.panFull === true ? parts.pan.fullKg : 0;
  const row = (count: number, massKg: number, waterC: number): Cell[] =>
    Array.from({ length: count }, () => ({ massKg: massKg / count, waterC }));
  const fromStoreKg = parts.reservoirPlumbing ? 0 : inPanKg;
  return {
    parts,
    pan: row(panCells, inPanKg, options.panC).map((cell) => ({ ...cell, sheetC: options.panC })),
    supply: row(pipeNodes, parts.pipe.massKg, options.waterC),
    return: row(pipeNodes, parts.pipe.massKg, options.waterC),
    store: row(storeLayers, parts.store.startKg - fromStoreKg, options.waterC),
    reservoir: parts.reservoirPlumbing
      ? { massKg: parts.reservoir.startKg - inPanKg, waterC: options.waterC }
      : null,
    moving: {
      pumpFraction: 0,
      drainOpen: true,
      drainPumpOn: false,
      exchangerPumpOn: false,
      flowLMin: 0,
      pumpPowerW: 0,
    },
    sensors: {},
    readingCount: 0,
  };
}

/** All water of the loop [kg]. */
export function plantKg(state: PlantState): number {
  const rows = totalKg(state.pan) + totalKg(state.supply) + totalKg(state.return) + totalKg(state.store);
  return rows + (state.reservoir?.massKg ?? 0);
}

/** All heat of the loop above 0 °C [J]. */
export function plantJ(state: PlantState): number {
  const rows = totalJ(state.pan) + totalJ(state.supply) + totalJ(state.return) + totalJ(state.store);
  const reservoirJ = state.reservoir === null ? 0 : totalJ([state.reservoir]);
  return rows + reservoirJ + sheetJ(state.pan, state.parts);
}
