interface TraitDeclaration {
  readonly unit: string;
  readonly default: number;
  readonly least: number;
  readonly most: number;
  readonly meaning: string;
}

/**
 * What a site file does not say of a loop, declared once: a scenario file may set them, a fit may find them.
 *
 * The collector's four coefficients are the middles of 0.85 to 0.96, 0.01 to 0.04 s/m, 8 to 15 W/m2K and
 * 2 to 5 Ws/m3K: ranges from memory, none of them measured. Sheet and water capacities are computed. The
 * rest are design choices in the usual order of size.
 */
export const traitDeclarations = {
  opticalEfficiency: {
    unit: '1',
    default: 0.905,
    least: 0.3,
    most: 1,
    meaning: 'Share of the net irradiance that reaches the water in still air, no excess over the air.',
  },
  windOpticalSM: {
    unit: 's/m',
    default: 0.025,
    least: 0,
    most: 0.2,
    meaning: 'Loss of that efficiency with each metre a second of wind.',
  },
  stillLossWM2K: {
    unit: 'W/m2K',
    default: 11.5,
    least: 2,
    most: 40,
    meaning: 'Loss to the air without wind.',
  },
  windLossJM3K: {
    unit: 'J/m3K',
    default: 3.5,
    least: 0,
    most: 20,
    meaning: 'Further loss with each metre a second of wind.',
  },
  panAspect: {
    unit: '1',
    default: 1,
    least: 0.1,
    most: 10,
    meaning: 'Length of the pan along its flow over its width.',
  },
  panAzimuthDeg: {
    unit: 'deg',
    default: 180,
    least: 0,
    most: 360,
    meaning: 'Where the pan falls to, from north through east.',
  },
  rowPitchM: {
    unit: 'm',
    default: 0,
    least: 0,
    most: 50,
    meaning: 'From one row of falling pans to the next, seen along the fall; 0 when nothing stands in front.',
  },
  emissivityRatio: {
    unit: '1',
    default: 0.95,
    least: 0,
    most: 1.2,
    meaning: 'Emissivity of the sheet over its absorptivity.',
  },
  contactWM2K: {
    unit: 'W/m2K',
    default: 250,
    least: 60,
    most: 2000,
    meaning: 'From sheet to water when it flows at the rated flow and touches everywhere.',
  },
  restContactFraction: {
    unit: '1',
    default: 0.6,
    least: 0.05,
    most: 1,
    meaning: 'What is left of that when warm sheet lies on still water.',
  },
  contactFraction: {
    unit: '1',
    default: 1,
    least: 0.05,
    most: 1,
    meaning: 'How well the sheet touches: dirt, waves and lifted spots make it less.',
  },
  airKeptFraction: {
    unit: '1',
    default: 0.12,
    least: 0,
    most: 0.9,
    meaning: 'Share of a level sheet that keeps air under it after filling; a fall lets it out.',
  },
  insulationWM2K: {
    unit: 'W/m2K',
    default: 1,
    least: 0.05,
    most: 20,
    meaning: 'Through liner and insulation.',
  },
  sheetJM2K: {
    unit: 'J/m2K',
    default: 3846.5,
    least: 100,
    most: 50_000,
    meaning: 'Heat capacity of the sheet; that of 1 mm of steel.',
  },
  sheetConductanceWK: {
    unit: 'W/K',
    default: 0.05,
    least: 0,
    most: 1,
    meaning: 'Conductivity of the sheet times its thickness; that of 1 mm of steel at 50 W/mK.',
  },
  edgeLaneFraction: {
    unit: '1',
    default: 0.25,
    least: 0.05,
    most: 0.9,
    meaning: 'Share of the wetted area that lies along the walls.',
  },
  flowEvenness: {
    unit: '1',
    default: 1,
    least: 0,
    most: 1,
    meaning: 'How evenly water passes under the sheet; 0 when all of it runs along the walls.',
  },
  laneMixingKgS: {
    unit: 'kg/s',
    default: 0.02,
    least: 0,
    most: 5,
    meaning: 'Water that middle and edge exchange in each stretch of the pan.',
  },
  wallLossWM2K: {
    unit: 'W/m2K',
    default: 4,
    least: 0,
    most: 30,
    meaning: 'Through the wall beside the water.',
  },
  pipeInsideMm: {
    unit: 'mm',
    default: 25,
    least: 8,
    most: 150,
    meaning:
      'Inside diameter of the pipes; where none is given, one in which the rated flow stays below 1 m/s.',
  },
  pipeBeyondM: {
    unit: 'm',
    default: 5,
    least: 0,
    most: 200,
    meaning: 'Length of each pipe beyond the height between store and pan.',
  },
  pipeRoughnessMm: { unit: 'mm', default: 0.0015, least: 0, most: 1, meaning: 'Roughness of the pipes.' },
  pipeLossWMK: { unit: 'W/mK', default: 0.25, least: 0, most: 5, meaning: 'Loss of the insulated pipes.' },
  drainInsideMm: {
    unit: 'mm',
    default: 50,
    least: 8,
    most: 150,
    meaning: 'Inside diameter of the drain, and of its line.',
  },
  siphonPullFraction: {
    unit: '1',
    default: 1,
    least: 0,
    most: 1,
    meaning:
      'Share of its fall with which a full return pipe pulls: all where sheet and liner close the pan, none where its water lies open.',
  },
  siphonMs: {
    unit: 'm/s',
    default: 0.45,
    least: 0.1,
    most: 2,
    meaning: 'Velocity in the return pipe that carries its air away; practice gives 0.3 to 0.6.',
  },
  storeConductionWMK: {
    unit: 'W/mK',
    default: 1.2,
    least: 0,
    most: 50,
    meaning: 'Conduction down the store: 0.6 of still water and as much again of its walls.',
  },
  inletMixingFraction: {
    unit: '1',
    default: 0.15,
    least: 0,
    most: 1,
    meaning: 'Water that a plume takes along from each layer that it passes, over its own.',
  },
  exchangerWM2K: {
    unit: 'W/m2K',
    default: 60,
    least: 5,
    most: 500,
    meaning: 'Heat exchanger of a drain-back loop, by square metre of pan.',
  },
  restExchangeFraction: {
    unit: '1',
    default: 0.05,
    least: 0,
    most: 1,
    meaning: 'What of that is left by natural convection while its pump rests; 0 behind a check valve.',
  },
  drawnStoreFraction: {
    unit: '1',
    default: 0.5,
    least: 0,
    most: 10,
    meaning: 'Water wanted at the tap in a day, over the water of the store.',
  },
  tapC: { unit: 'C', default: 40, least: 10, most: 65, meaning: 'Temperature behind the mixing valve.' },
  makeUpC: {
    unit: 'C',
    default: 14,
    least: 1,
    most: 35,
    meaning: 'Cold water that comes after what is drawn.',
  },
  depthFactor: {
    unit: '1',
    default: 1,
    least: 0.3,
    most: 3,
    meaning: "Depth of the pan's water over that of the site file.",
  },
  flowFactor: {
    unit: '1',
    default: 1,
    least: 0.2,
    most: 3,
    meaning: 'Flow through the full loop at full speed over that of the site file.',
  },
  storeLossFactor: {
    unit: '1',
    default: 1,
    least: 0.05,
    most: 20,
    meaning: 'Loss of the store over that of the site file.',
  },
} as const satisfies Record<string, TraitDeclaration>;

export type TraitName = keyof typeof traitDeclarations;
export type Traits = Readonly<Record<TraitName, number>>;
export const traitNames = Object.keys(traitDeclarations) as [TraitName, ...TraitName[]];

export const usualTraits: Traits = Object.fromEntries(
  traitNames.map((name) => [name, traitDeclarations[name].default]),
) as Record<TraitName, number>;
