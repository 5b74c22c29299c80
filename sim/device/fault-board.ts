import type { Fault } from '../plant/faults.ts';

/** Faults that are there or will be. A fault is the same as another of its name and channel. */
export interface FaultBoard {
  /** Puts a fault up, at once or from an instant of the device's clock on [UTC ms]. */
  raise(fault: Fault, fromMs?: number): void;
  clear(fault: Pick<Fault, 'name' | 'channel'>): void;
  activeAt(atMs: number): readonly Fault[];
}

export function createFaultBoard(): FaultBoard {
  let entries: readonly { readonly fault: Fault; readonly fromMs: number }[] = [];
  const others = ({ name, channel }: Pick<Fault, 'name' | 'channel'>) =>
    entries.filter(({ fault }) => fault.name !== name || fault.channel !== channel);
  return {
    raise: (fault, fromMs = Number.NEGATIVE_INFINITY) => {
      entries = [...others(fault), { fault, fromMs }];
    },
    clear: (fault) => {
      entries = others(fault);
    },
    activeAt: (atMs) => entries.filter(({ fromMs }) => fromMs <= atMs).map(({ fault }) => fault),
  };
}
