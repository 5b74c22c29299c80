import type { Channel } from '../../../shared-types/channels.ts';
import type { DrawCourse } from '../../plant/draws.ts';
import { storeLayers } from '../../plant/parts.ts';
import { createPlant, type PlantState } from '../../plant/state.ts';
import type { Traits } from '../../plant/traits.ts';
import type { LoggedSpan } from './span.ts';

/** Store and pan are looked at over so many minutes at the beginning. */
const lookedMin = 10;
const usualStoreC = 20;
/** Where the sensors of a store sit, as a share of the way down. */
const places: readonly (readonly [Channel, number])[] = [
  ['storeTopC', 0],
  ['storeMiddleC', 0.5],
  ['storeBottomC', 1],
];
const wetPhases: readonly string[] = ['circulating', 'resting'];

/** The loop as the first minutes of a span show it. Where nothing shows it, usual values stand. */
export function beginOf(span: LoggedSpan, traits: Partial<Traits>, drawCourse: DrawCourse): PlantState {
  const { site, phases, minutes } = span;
  const first = (channel: Channel) => firstMean(minutes.values[channel]);
  const known = places.flatMap(([channel, down]) => {
    const valueC = first(channel);
    return valueC === undefined ? [] : [{ down, valueC }];
  });
  const panC = first('panSheetC') ?? first('panOutletC') ?? first('ambientC') ?? usualStoreC;
  const panFull = wetPhases.includes(phases[0]?.phase ?? 'empty');
  const waterC = within(known.at(-1)?.valueC ?? usualStoreC);
  const plant = createPlant(site, {
    traits,
    drawCourse,
    waterC,
    panC: panFull ? within(panC) : panC,
    panFull,
  });
  for (let layer = 0; layer < storeLayers; layer++)
    plant.store.waterC[layer] = within(profileC(known, layer / (storeLayers - 1)) ?? waterC);
  const { reservoir } = plant;
  if (reservoir !== null) reservoir.waterC[0] = within(first('reservoirC') ?? waterC);
  return plant;
}

/** Liquid water, as the plant takes it at its beginning [°C]. */
const within = (valueC: number) => Math.min(95, Math.max(0.5, valueC));

function firstMean(values: Float64Array | undefined): number | undefined {
  const good = values?.subarray(0, lookedMin).filter((value) => !Number.isNaN(value));
  if (good === undefined || good.length === 0) return undefined;
  return good.reduce((sum, value) => sum + value, 0) / good.length;
}

/** By straight lines between the sensors, none colder above than below. */
function profileC(
  known: readonly { readonly down: number; readonly valueC: number }[],
  down: number,
): number | undefined {
  const above = known.findLast((sensor) => sensor.down <= down);
  const below = known.find((sensor) => sensor.down >= down);
  if (above === undefined || below === undefined) return (above ?? below)?.valueC;
  if (above === below) return above.valueC;
  const share = (down - above.down) / (below.down - above.down);
  return Math.max(below.valueC, above.valueC + share * (below.valueC - above.valueC));
}
