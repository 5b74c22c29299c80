import type { Channel } from '../../shared-types/channels.ts';

interface FaultDeclaration {
  /** A fault of a sensor needs a channel; a swap needs a second one. */
  readonly on: 'sensor' | 'two-sensors' | 'part' | 'device';
  readonly meaning: string;
  /** What a size means, its range, and which is taken when none is given; absent when nothing has a size. */
  readonly size?: {
    readonly unit: string;
    readonly default: number;
    readonly least: number;
    readonly most: number;
  };
}

const ofChannel = "the channel's unit";
const share = 'share, 0 to 1';

/** Every fault that the simulated loop can have. */
const faultDeclarations = {
  'sensor-open': { on: 'sensor', meaning: 'The wire is broken: an open circuit is reported.' },
  'sensor-short': { on: 'sensor', meaning: 'The wires touch: a short circuit is reported.' },
  'sensor-silent': { on: 'sensor', meaning: 'The value is no longer sent.' },
  'sensor-intermittent': {
    on: 'sensor',
    meaning: 'A loose contact: this share of the values is missing.',
    size: { unit: share, default: 0.5, least: 0, most: 1 },
  },
  'sensor-stuck': { on: 'sensor', meaning: 'The value no longer changes.' },
  'sensor-offset': {
    on: 'sensor',
    meaning: 'The value is wrong by a constant.',
    size: { unit: ofChannel, default: 5, least: -1000, most: 1000 },
  },
  'sensor-drifting': {
    on: 'sensor',
    meaning: 'The value goes wrong by this much each day.',
    size: { unit: `${ofChannel} a day`, default: 5, least: -1000, most: 1000 },
  },
  'sensor-noisy': {
    on: 'sensor',
    meaning: 'The value scatters with this standard deviation.',
    size: { unit: ofChannel, default: 3, least: 0, most: 1000 },
  },
  'sensor-spiking': {
    on: 'sensor',
    meaning: 'One value in about ten is wrong by this.',
    size: { unit: ofChannel, default: 40, least: -1000, most: 1000 },
  },
  'sensor-slow': {
    on: 'sensor',
    meaning: 'Badly strapped on: it follows this many times as slowly.',
    size: { unit: 'times', default: 20, least: 1, most: 1000 },
  },
  'sensor-loose': {
    on: 'sensor',
    meaning: 'Fallen off its place: this share of what it shows is the air.',
    size: { unit: share, default: 0.7, least: 0, most: 1 },
  },
  'sensor-sunlit': {
    on: 'sensor',
    meaning: 'The sun shines on it: it shows this much more at 1000 W/m2.',
    size: { unit: ofChannel, default: 12, least: 0, most: 100 },
  },
  'sensors-swapped': { on: 'two-sensors', meaning: 'Two sensors are wired in place of each other.' },
  'topic-silent': {
    on: 'sensor',
    meaning: 'Nothing is sent any more on the topic that carries this channel.',
  },
  'device-silent': { on: 'device', meaning: 'No reading is sent any more; outputs are still obeyed.' },
  'power-cut': {
    on: 'device',
    meaning: 'No power at pump, valve and sensors: the pump stands, a drain valve opens, nothing is sent.',
  },
  'pump-dead': { on: 'part', meaning: 'The pump draws no power and moves no water.' },
  'pump-stuck-on': { on: 'part', meaning: 'The relay is welded: the pump runs at full speed for ever.' },
  'pump-reversed': { on: 'part', meaning: 'The pump turns the wrong way round, with a third of its head.' },
  'pump-unprimed': { on: 'part', meaning: 'Air in the pump: it runs on less power and moves no water.' },
  'half-flow': {
    on: 'part',
    meaning: 'Something is in the way: the pump moves only this share of its flow.',
    size: { unit: share, default: 0.5, least: 0, most: 1 },
  },
  'filter-clogging': {
    on: 'part',
    meaning: 'A filter fills with dirt: this share of the remaining flow is lost each day.',
    size: { unit: 'share a day, 0 to 1', default: 0.2, least: 0, most: 1 },
  },
  'store-valve-shut': {
    on: 'part',
    meaning:
      'The valve at the store is shut: the pump runs and moves no water, and none comes back through it.',
  },
  'air-pocket': {
    on: 'part',
    meaning: 'Air stands under this share of the sheet.',
    size: { unit: share, default: 0.4, least: 0, most: 1 },
  },
  'sheet-dirty': {
    on: 'part',
    meaning: 'Dust and leaves keep this share of the sun away.',
    size: { unit: share, default: 0.3, least: 0, most: 1 },
  },
  'sheet-snowed': {
    on: 'part',
    meaning: 'Snow lies on the sheet, as much as this weighs; it melts like any other.',
    size: { unit: 'kg/m2', default: 15, least: 0, most: 200 },
  },
  'drain-stuck-shut': { on: 'part', meaning: 'The drain does not open, whatever it is told.' },
  'drain-stuck-open': { on: 'part', meaning: 'The drain does not close, whatever it is told.' },
  'drain-slow': {
    on: 'part',
    meaning: 'Something lies in the drain: this share of its flow is left.',
    size: { unit: share, default: 0.2, least: 0, most: 1 },
  },
  'dump-stuck-off': { on: 'part', meaning: 'The heat dump does nothing, whatever it is told.' },
  'pan-leak': {
    on: 'part',
    meaning: 'The liner has a pinhole.',
    size: { unit: 'L/h', default: 5, least: 0, most: 1000 },
  },
  'liner-burst': { on: 'part', meaning: 'The liner is torn: a full pan is on the ground within minutes.' },
  'reservoir-short': {
    on: 'part',
    meaning: 'This share of the loop water of a drain-back reservoir is lost to the ground.',
    size: { unit: share, default: 0.5, least: 0, most: 1 },
  },
} as const satisfies Record<string, FaultDeclaration>;

export type FaultName = keyof typeof faultDeclarations;
export const faultNames = Object.keys(faultDeclarations) as [FaultName, ...FaultName[]];

/** A fault that is there now. */
export interface Fault {
  readonly name: FaultName;
  /** Sensor that has it, and the other of a swapped pair; absent for other faults. */
  readonly channel?: Channel;
  readonly other?: Channel;
  readonly size: number;
  /** How long it has been there [s]; what grows with time grows from here. */
  readonly forS: number;
}

export function declarationOf(name: FaultName): FaultDeclaration {
  return faultDeclarations[name];
}

/** The fault of a part if it is there. */
export function partFault(faults: readonly Fault[], name: FaultName): Fault | undefined {
  // Nearly every step is healthy, and this is asked many times a step.
  return faults.length === 0 ? undefined : faults.find((fault) => fault.name === name);
}
