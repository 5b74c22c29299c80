/**
 * Standing cautions for people who build, run and mend such a loop: plain data for screens and documents.
 *
 * None takes the place of a local code or of a licensed trade, and the software is not the only safety device.
 */
export const cautionCodes = [
  'roof-load',
  'fragile-roof',
  'hot-sheet',
  'mains',
  'scald',
  'hygiene',
  'frost',
  'software',
  'local-codes',
] as const;
export type CautionCode = (typeof cautionCodes)[number];

export interface Caution {
  readonly title: string;
  readonly text: string;
  /** Where it comes from; `common practice` where no source stands behind it. */
  readonly source: string;
}

/** Temperatures at which water in contact with the skin burns it seriously, and the time that takes. */
export const burnTimes: readonly {
  readonly waterC: number;
  readonly leastS: number;
  readonly mostS: number;
}[] = [
  { waterC: 48.9, leastS: 210, mostS: 390 },
  { waterC: 54.4, leastS: 21, mostS: 39 },
  { waterC: 60, leastS: 3.5, mostS: 6.5 },
  { waterC: 65.6, leastS: 1.5, mostS: 2 },
];

/** Water that stands within this range lets legionella grow [°C]; stored at the last it dies. */
export const legionella = { growsFromC: 20, growsToC: 45, storedAtC: 60, outletC: 50 } as const;

export const cautions: Readonly<Record<CautionCode, Caution>> = {
  'roof-load': {
    title: 'Weight on the roof',
    text: 'A full pan weighs some 40 kg on each square metre besides its own parts, more with snow or a clogged drain. Have the roof judged by someone who is licensed to before water goes up.',
    source: 'computed: 40 mm of water at 998 kg/m3; the rest common practice',
  },
  'fragile-roof': {
    title: 'Fragile roofs',
    text: 'Skylights, old cement sheets and rotten boards break under a person. Nobody steps on a roof that was not judged, nor works there without a guard against falling.',
    source: 'common practice',
  },
  'hot-sheet': {
    title: 'Hot sheet and liner',
    text: 'Sheet and water of a pan in the sun burn the skin, a dry pan sooner than a full one. Wait for the evening before anybody touches, wets or sweeps it, with the pump held, and use nothing that cuts: a hole in sheet or liner lets the water into the roof.',
    source: 'common practice',
  },
  mains: {
    title: 'Mains and water',
    text: 'Pump, valve and controller stand near water. Mains wiring, its earthing and a residual-current device are work for a licensed electrician.',
    source: 'common practice',
  },
  scald: {
    title: 'Scalding',
    text: 'Water of 60 °C burns the skin seriously in some five seconds, of 54 °C in half a minute, of 49 °C in five minutes; children and old people sooner. A mixing valve between store and taps keeps it below that.',
    source: 'published tables of burns, which differ by up to 30 %',
  },
  hygiene: {
    title: 'Hygiene of stored water',
    text: 'Legionella grows in water of 20 to 45 °C. Water for showers and taps is stored at 60 °C or more and reaches the outlet with 50 °C within a minute, or is heated by an exchanger when it is drawn; cold water stays below 20 °C. This loop alone does not disinfect.',
    source: 'HSE, HSG274 part 2, for 60, 50 and 20 °C',
  },
  frost: {
    title: 'Frost',
    text: 'A sheet under a clear night sky freezes while the air is still above 0 °C. Only a pan and pipes that have run empty are safe; the fall of the pipes decides that. A pan that cannot be emptied is for the warm season.',
    source: 'radiation balance of a bare plate, computed; the fall common practice',
  },
  software: {
    title: 'The software is not the only safety device',
    text: 'Overflow, pressure relief, the mixing valve, a drain that opens without power and a fuse have to work while the controller is dead. This software replaces none of them.',
    source: 'common practice',
  },
  'local-codes': {
    title: 'Local codes and licensed trades',
    text: 'Codes for plumbing, electricity, roofs and drinking water come before anything that is said here. Where they ask for a licensed trade, it does the work.',
    source: 'common practice',
  },
};
