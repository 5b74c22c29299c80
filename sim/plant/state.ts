import type { Site } from '../../shared-types/site.ts';
import type { Actuators } from './impairments.ts';
import { targetsInto } from './pan-shape.ts';
import {
  type LaneParts,
  type Parts,
  type PlantSetup,
  panCells,
  partsOf,
  pipeNodes,
  storeLayers,
} from './parts.ts';
import { createRow, type Row, rowJ, rowKg, sum } from './water.ts';

/**
 * The sensors between readings: one number a channel in the order of the list of channels, whether the loop
 * has it or not. Empty before the first step.
 */
interface SensorColumns {
  /** What the lagging bodies have come to, in the channels' units. */
  readonly bodyValue: number[];
  /** The values that were given last. */
  readonly shownValue: number[];
}

/** A lane of the pan along the flow: sheet above, water below as far as there is any. Inlet first. */
export interface Lane extends Row {
  readonly sheetC: number[];
}

/** The whole simulated loop as plain data. `advance` changes it in place. */
export interface PlantState {
  readonly parts: Parts;
  readonly pan: { readonly core: Lane; readonly edge: Lane };
  /** From the pump to the pan, and from the pan to the store. Either may stand empty. */
  readonly supply: Row;
  readonly return: Row;
  /** Layers from top to bottom. */
  readonly store: Row;
  /** The drain-back reservoir, one cell; null in an open-store loop. */
  readonly reservoir: Row | null;
  /** Snow on the sheet. */
  snowKgM2: number;
  /** Share of the sheet with air under it, and share of the return pipe that is air. */
  airFraction: number;
  returnAirFraction: number;
  /** What pump and drain did in the newest step. */
  moving: Actuators & { readonly flowLMin: number; readonly pumpPowerW: number };
  readonly sensors: SensorColumns;
  /** Readings taken so far; picks the noise of the next one. */
  readingCount: number;
}

export interface PlantOptions extends PlantSetup {
  /** Temperature of store and pipes at the start, 0 to 95 °C. */
  readonly waterC: number;
  /** Temperature of sheet and, if it is full, pan at the start. */
  readonly panC: number;
  readonly panFull?: boolean;
}

/** A loop at rest. A full pan and its supply pipe take their water from the store, or from the reservoir. */
export function createPlant(site: Site, options: PlantOptions): PlantState {
  const parts = partsOf(site, options);
  const full = options.panFull === true;
  const inPanKg = full ? parts.pan.fullKg : 0;
  const inPipeKg = full ? parts.pipe.fullKg : 0;
  const { reservoir } = parts.plumbing;
  const storeKg = parts.store.startKg - (reservoir ? 0 : inPanKg + inPipeKg);
  const reservoirKg = parts.reservoir.startKg - inPanKg - inPipeKg;
  return {
    parts,
    pan: {
      core: createLane(parts, parts.pan.core, inPanKg, options.panC),
      edge: createLane(parts, parts.pan.edge, inPanKg, options.panC),
    },
    supply: createRow(pipeNodes, inPipeKg, options.waterC),
    return: createRow(pipeNodes, 0, options.waterC),
    store: createRow(storeLayers, storeKg, options.waterC),
    reservoir: reservoir ? createRow(1, reservoirKg, options.waterC) : null,
    snowKgM2: 0,
    airFraction: full ? parts.pan.airKeptFraction : parts.pan.airAtFirstFraction,
    returnAirFraction: 1,
    moving: {
      pumpFraction: 0,
      drainOpen: true,
      drainPumpOn: false,
      exchangerPumpOn: false,
      flowLMin: 0,
      pumpPowerW: 0,
    },
    sensors: { bodyValue: [], shownValue: [] },
    readingCount: 0,
  };
}

function createLane({ pan }: Parts, lane: LaneParts, inPanKg: number, panC: number): Lane {
  const laneKg = inPanKg * lane.waterFraction;
  const row = createRow(panCells, laneKg, panC);
  targetsInto(row.massKg, pan.fillShapes, laneKg, lane.cellKg);
  return { ...row, sheetC: row.waterC.slice() };
}

/** Liquid water in the pan [kg]. */
export function panLiquidKg({ pan }: PlantState): number {
  return sum(pan.core.massKg) + sum(pan.edge.massKg);
}

/** All water of the loop, ice included [kg]. */
export function plantKg(state: PlantState): number {
  const { pan, supply, return: home, store, reservoir } = state;
  const inRows = rowKg(pan.core) + rowKg(pan.edge) + rowKg(supply) + rowKg(home) + rowKg(store);
  return inRows + (reservoir === null ? 0 : rowKg(reservoir));
}

/** All heat of the loop above liquid water at 0 °C, and of its sheet above 0 °C [J]. */
export function plantJ(state: PlantState): number {
  const { pan, supply, return: home, store, reservoir, parts } = state;
  const inRows = rowJ(pan.core) + rowJ(pan.edge) + rowJ(supply) + rowJ(home) + rowJ(store);
  const inReservoir = reservoir === null ? 0 : rowJ(reservoir);
  const { sheetJM2K } = parts.traits;
  const inSheet =
    sheetJM2K *
    (parts.pan.core.sheetM2 * sum(pan.core.sheetC) + parts.pan.edge.sheetM2 * sum(pan.edge.sheetC));
  return inRows + inReservoir + inSheet;
}
