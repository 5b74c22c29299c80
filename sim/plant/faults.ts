import type { Channel } from '../../shared-types/channels.ts';

interface FaultDeclaration {
  /** A fault of a sensor needs a channel. */
  readonly on: 'sensor' | 'part' | 'device';
  readonly meaning: string;
  /** What a size means and which is taken when none is given; absent when there is nothing to size. */
  readonly size?: { readonly unit: string; readonly default: number };
}

/** Every fault that the simulated loop can have. */
const faultDeclarations = {
  'sensor-open': { on: 'sensor', meaning: 'The wire is broken: an open circuit is reported.' },
  'sensor-short': { on: 'sensor', meaning: 'The wires touch: a short circuit is reported.' },
  'sensor-silent': { on: 'sensor', meaning: 'The value is no longer sent.' },
  'sensor-stuck': { on: 'sensor', meaning: 'The value no longer changes.' },
  'sensor-offset': {
    on: 'sensor',
    meaning: 'The value is wrong by a constant.',
    size: { unit: "the channel's unit", default: 5 },
  },
  'sensor-noisy': {
    on: 'sensor',
    meaning: 'The value scatters with this standard deviation.',
    size: { unit: "the channel's unit", default: 3 },
  },
  'sensor-spiking': {
    on: 'sensor',
    meaning: 'One value in about ten is wrong by this.',
    size: { unit: "the channel's unit", default: 40 },
  },
  'device-silent': { on: 'device', meaning: 'No reading is sent any more; outputs are still obeyed.' },
  'pump-dead': { on: 'part', meaning: 'The pump draws no power and moves no water.' },
  'pump-stuck-on': { on: 'part', meaning: 'The relay is welded: the pump runs at full speed for ever.' },
  'half-flow': {
    on: 'part',
    meaning: 'The pump moves only this share of its flow at its usual power.',
    size: { unit: 'share of the flow, 0 to 1', default: 0.5 },
  },
  'drain-stuck-shut': { on: 'part', meaning: 'The drain does not open, whatever it is told.' },
  'drain-stuck-open': { on: 'part', meaning: 'The drain does not close, whatever it is told.' },
} as const satisfies Record<string, FaultDeclaration>;

export type FaultName = keyof typeof faultDeclarations;
export const faultNames = Object.keys(faultDeclarations) as [FaultName, ...FaultName[]];

/** A fault that is there now. */
export interface Fault {
  readonly name: FaultName;
  /** Sensor that has it; absent for other faults. */
  readonly channel?: Channel;
  readonly size: number;
}

export function declarationOf(name: FaultName): FaultDeclaration {
  return faultDeclarations[name];
}

/** The fault of a part if it is there. */
export function partFault(faults: readonly Fault[], name: FaultName): Fault | undefined {
  return faults.find((fault) => fault.name === name);
}
