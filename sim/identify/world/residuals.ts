import { type Channel, temperatureChannels } from '../../../shared-types/channels.ts';
import { numberOf } from '../../plant/makes.ts';
import type { PlantState } from '../../plant/state.ts';
import { median } from './mending.ts';
import { minuteMs } from './minutes.ts';
import type { LoggedSpan } from './span.ts';

/** What the logged thermometers showed more than those of a plant that followed them. */
export interface Residuals {
  note(minute: number, plant: PlantState): void;
  /** Middle of it for each thermometer while water circulated [K]; left out where there was too little. */
  offsetsK(): Partial<Record<Channel, number>>;
}

/** After a change of phase so long nothing is compared [ms]; a design choice. */
const settleMs = 15 * minuteMs;
const leastMinutes = 20;

export function createResiduals({ minutes, phases }: LoggedSpan): Residuals {
  const apart = new Map<Channel, number[]>();
  const own = temperatureChannels.filter((channel) => minutes.values[channel] !== undefined);
  let next = 0;
  return {
    note(minute, plant) {
      const atMs = minutes.fromMs + (minute + 1) * minuteMs;
      while ((phases[next]?.fromMs ?? Number.POSITIVE_INFINITY) <= atMs) next++;
      const begun = phases[next - 1];
      if (begun?.phase !== 'circulating' || atMs - begun.fromMs < settleMs) return;
      for (const channel of own) {
        const shown = minutes.values[channel]?.[minute] as number;
        const followed = plant.sensors.bodyValue[numberOf[channel]] as number;
        if (Number.isNaN(shown)) continue;
        const list = apart.get(channel) ?? [];
        list.push(shown - followed);
        apart.set(channel, list);
      }
    },
    offsetsK() {
      const offsets: Partial<Record<Channel, number>> = {};
      for (const [channel, list] of apart) if (list.length >= leastMinutes) offsets[channel] = median(list);
      return offsets;
    },
  };
}
