import type { Channel } from '../../shared-types/channels.ts';
import { panVolumeL, type Site } from '../../shared-types/site.ts';
import type { CollectorCoefficients } from '../physics/collector.ts';
import { gravityFlowKgS } from '../physics/draining.ts';
import { finEfficiency } from '../physics/fin.ts';
import type { WalledPan } from '../weather/shading.ts';
import { type Plane, planeOf } from '../weather/tilt.ts';
import type { DrawCourse, DrawProfile } from './draws.ts';
import { type FlowTables, flowTablesOf, liftM, type Plumbing } from './flow-tables.ts';
import { fillShapes } from './pan-shape.ts';
import { remembered } from './remembered.ts';
import { type Traits, usualTraits } from './traits.ts';
import { waterKgL } from './water.ts';

/** Part of the pan along its flow: the middle, or what lies along the walls. */
export interface LaneParts {
  /** Share of the pan's water. */
  readonly waterFraction: number;
  /** Water of a full cell. */
  readonly cellKg: number;
  /** Sheet that gathers heat, over each cell: what lies on water, and what a dry rim still passes on. */
  readonly sheetM2: number;
  readonly wettedM2: number;
  /** Through liner and walls of a full cell [W/K]. */
  readonly linerWK: number;
}

/** What the plant needs to know of a loop, in the plant's own terms. Plain numbers. */
export interface Parts {
  readonly plumbing: Plumbing;
  readonly channels: readonly Channel[];
  readonly traits: Traits;
  readonly draw: DrawProfile;
  /** Drawn in place of the habit; null: the habit holds. */
  readonly drawCourse: DrawCourse | null;
  readonly drawnKgDay: number;
  readonly collector: CollectorCoefficients;
  readonly pan: {
    readonly fullKg: number;
    /** Up to the wall, from where it runs over. */
    readonly wallKg: number;
    readonly depthM: number;
    /** Fall within the cell where the pan lies lowest. */
    readonly cellFallM: number;
    /** How the pan lies to the sun, and the part of its walls that stands above the sheet. */
    readonly plane: Plane;
    readonly walls: WalledPan;
    readonly rowPitchM: number;
    /** Sheet that gathers heat. */
    readonly sheetM2: number;
    readonly core: LaneParts;
    readonly edge: LaneParts;
    /** Share of the water that flows along the walls while the pan is full. */
    readonly edgeFlowFraction: number;
    /** How full each cell is, for 64 and one equal steps of the whole pan's filling. */
    readonly fillShapes: readonly number[];
    /** Air under the sheet just after filling, and what is left once the flow has let it out. */
    readonly airAtFirstFraction: number;
    readonly airKeptFraction: number;
  };
  readonly pump: { readonly ratedKgS: number; readonly ratedPowerW: number };
  readonly flows: FlowTables;
  /** Through the full drain line by gravity, and what a drain pump takes. */
  readonly drain: { readonly fullKgS: number; readonly insideM: number; readonly pumpKgS: number };
  readonly pipe: {
    readonly fullKg: number;
    readonly lossWK: number;
    readonly areaM2: number;
    readonly lengthM: number;
    /** What the return pipe carries by its fall. */
    readonly gravityKgS: number;
  };
  readonly store: {
    readonly startKg: number;
    readonly brimKg: number;
    readonly leastKg: number;
    readonly heightM: number;
    readonly areaM2: number;
    readonly lossWK: number;
  };
  /** Only where the loop has one: heat that its radiator gives to the air per kelvin. */
  readonly heatDump?: { readonly conductanceWK: number };
  readonly reservoir: {
    readonly startKg: number;
    readonly leastKg: number;
    readonly lossWK: number;
    readonly exchangerWK: number;
    readonly heightM: number;
  };
}

export const panCells = 8;
export const storeLayers = 12;
export const pipeNodes = 4;

const flowTables = remembered(flowTablesOf);
const shapesOf = remembered(fillShapes);

export interface PlantSetup {
  readonly traits?: Partial<Traits>;
  readonly draw?: DrawProfile;
  readonly drawCourse?: DrawCourse;
}

/** The least height through which a pipe falls [m], when the pan lies at the store's own height or below. */
const leastDropM = 0.2;

/** Turns a site file, and what is known beyond it, into plant parts. */
export function partsOf(declared: Site, setup: PlantSetup = {}): Parts {
  const { traits: own = {}, draw = 'wash-house', drawCourse = null } = setup;
  const traits = { ...usualTraits, pipeInsideMm: usualPipeMm(declared.pump.ratedFlowLMin), ...own };
  const site = asBuilt(declared, traits);
  const fullKg = panVolumeL(site) * waterKgL;
  const plumbing: Plumbing = {
    reservoir: site.plumbing === 'reservoir',
    outlet: site.outlet,
    drain: site.drain,
    siphons: site.outlet !== 'low',
    pullFraction: traits.siphonPullFraction,
    dropM: site.pan.heightAboveStoreM,
  };
  const pipe = pipeOf(site, traits);
  const store = storeOf(site);
  const reservoir = {
    startKg: 1.15 * fullKg + 20 + 2 * pipe.fullKg,
    leastKg: 5,
    lossWK: 2,
    exchangerWK: traits.exchangerWM2K * site.pan.wettedAreaM2,
    heightM: 0.8,
  };
  const pump = { ratedKgS: (site.pump.ratedFlowLMin / 60) * waterKgL, ratedPowerW: site.pump.ratedPowerW };
  // The loop runs with the pan's water taken out of its source.
  const sourceBelowTopM = plumbing.reservoir
    ? (reservoir.heightM * fullKg) / reservoir.startKg
    : store.heightM * (1 - (store.startKg - fullKg) / store.brimKg);
  return {
    plumbing,
    channels: Object.keys(site.sensors) as Channel[],
    traits,
    draw,
    drawCourse,
    drawnKgDay: traits.drawnStoreFraction * store.startKg,
    collector: traits,
    pan: panOf(site, traits, fullKg),
    pump,
    flows: flowTables({
      ratedKgS: pump.ratedKgS,
      ratedHeadM: site.pump.ratedHeadM,
      insideM: traits.pipeInsideMm / 1000,
      roughnessM: traits.pipeRoughnessMm / 1000,
      lengthM: pipe.lengthM,
      liftM: liftM(plumbing, sourceBelowTopM),
      siphons: plumbing.siphons,
    }),
    drain: {
      fullKgS: fallingKgS(site, traits, traits.drainInsideMm),
      insideM: traits.drainInsideMm / 1000,
      pumpKgS: fullKg / 600,
    },
    pipe,
    store,
    reservoir,
    ...(site.heatDump === undefined ? {} : { heatDump: site.heatDump }),
  };
}

/** The site with what was found of it in place of what its file declares. */
function asBuilt(site: Site, { depthFactor, flowFactor, storeLossFactor }: Traits): Site {
  const { pan, pump, store } = site;
  return {
    ...site,
    pan: { ...pan, waterDepthM: pan.waterDepthM * depthFactor },
    pump: { ...pump, ratedFlowLMin: pump.ratedFlowLMin * flowFactor },
    store: { ...store, lossWK: store.lossWK * storeLossFactor },
  };
}

/** Inside diameters that pipes are sold in, about. */
const pipeSizesMm = [10, 13, 16, 20, 25, 32, 40, 50, 63, 80, 100] as const;

/** The narrowest pipe in which the rated flow stays below 1 m/s (common practice). */
function usualPipeMm(ratedFlowLMin: number): number {
  const areaMm2 = (ratedFlowLMin / 60_000) * 1e6;
  return pipeSizesMm.find((insideMm) => (Math.PI / 4) * insideMm ** 2 >= areaMm2) ?? 150;
}

const pipeLengthM = ({ pan }: Site, { pipeBeyondM }: Traits) => Math.abs(pan.heightAboveStoreM) + pipeBeyondM;

/** What a pipe from the pan to the store carries by its fall [kg/s]. */
function fallingKgS(site: Site, traits: Traits, insideMm: number): number {
  return gravityFlowKgS({
    dropM: Math.max(leastDropM, site.pan.heightAboveStoreM),
    insideM: insideMm / 1000,
    lengthM: pipeLengthM(site, traits),
    roughnessM: traits.pipeRoughnessMm / 1000,
    entranceLoss: 0.5,
  });
}

function pipeOf(site: Site, traits: Traits): Parts['pipe'] {
  const areaM2 = (Math.PI / 4) * (traits.pipeInsideMm / 1000) ** 2;
  const lengthM = pipeLengthM(site, traits);
  return {
    fullKg: areaM2 * lengthM * waterKgL * 1000,
    lossWK: traits.pipeLossWMK * lengthM,
    areaM2,
    lengthM,
    gravityKgS: fallingKgS(site, traits, traits.pipeInsideMm),
  };
}

function storeOf({ store }: Site): Parts['store'] {
  const startKg = store.volumeL * waterKgL;
  return {
    startKg,
    brimKg: startKg + store.headroomL * waterKgL,
    leastKg: 0.02 * startKg,
    heightM: store.heightM,
    areaM2: (store.volumeL + store.headroomL) / 1000 / store.heightM,
    lossWK: store.lossWK,
  };
}

function panOf({ pan, outlet }: Site, traits: Traits, fullKg: number): Parts['pan'] {
  const wettedM2 = pan.wettedAreaM2;
  const lengthM = Math.sqrt(wettedM2 * traits.panAspect);
  const widthM = wettedM2 / lengthM;
  const perimeterM = 2 * (lengthM + widthM);
  const rimM2 = pan.grossAreaM2 - wettedM2;
  const lossWM2K = traits.stillLossWM2K + 2 * traits.windLossJM3K;
  const rimFraction = finEfficiency(rimM2 / perimeterM, lossWM2K, traits.sheetConductanceWK);
  const wallM2 = perimeterM * pan.waterDepthM;
  const lane = (waterFraction: number, rim: number, wall: number): LaneParts => ({
    waterFraction,
    cellKg: (fullKg * waterFraction) / panCells,
    wettedM2: (wettedM2 * waterFraction) / panCells,
    sheetM2: (wettedM2 * waterFraction + rim) / panCells,
    linerWK: (traits.insulationWM2K * wettedM2 * waterFraction + traits.wallLossWM2K * wall) / panCells,
  });
  const { edgeLaneFraction, flowEvenness } = traits;
  const fallM = pan.fallFraction * lengthM;
  return {
    fullKg,
    wallKg: fullKg * Math.max(1, pan.wallHeightM / pan.waterDepthM),
    depthM: pan.waterDepthM,
    cellFallM: ((outlet === 'low' ? 2 : 1) * fallM) / panCells,
    plane: planeOf((Math.atan(pan.fallFraction) * 180) / Math.PI, traits.panAzimuthDeg),
    walls: {
      wallHeightM: Math.max(0, pan.wallHeightM - pan.waterDepthM),
      lengthM,
      widthM,
      azimuthDeg: traits.panAzimuthDeg,
    },
    rowPitchM: traits.rowPitchM,
    sheetM2: wettedM2 + rimFraction * rimM2,
    core: lane(1 - edgeLaneFraction, 0, 0),
    edge: lane(edgeLaneFraction, rimFraction * rimM2, wallM2),
    edgeFlowFraction: 1 - (1 - edgeLaneFraction) * flowEvenness,
    fillShapes: shapesOf(panCells, pan.waterDepthM, fallM, outlet === 'low'),
    airAtFirstFraction: traits.airKeptFraction,
    airKeptFraction: traits.airKeptFraction * Math.exp(-fallM / airFallM),
  };
}

/** A fall of two centimetres lets out all but a third of the air (a design choice: "a few centimetres" do). */
const airFallM = 0.02;
