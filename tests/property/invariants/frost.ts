import { channelMeaning } from '../../../shared-types/channels.ts';
import {
  coldestPanC,
  eachStep,
  type Invariant,
  isKeptWarm,
  isPumping,
  keepWarmException,
  panChannels,
  type Seen,
  usable,
} from './invariant.ts';

const corner = 'A pan without a drain has nothing to open; it is kept from frost by the season alone.';

/** A first cold sample may be a spike; the second is to be believed. */
const secondSample =
  'The first cold sample after warm ones may be a spike: the median of three waits for the second.';

export const frostOpensDrain: Invariant = {
  name: 'frost-opens-drain',
  promise:
    'While any usable pan reading is at the frost temperature or below and the pan is not proven empty, the pump stands and the drain is open, at that very step.',
  exceptions: [corner, keepWarmException],
  watch: eachStep((seen, { site, settings }) => {
    const { decision } = seen;
    const panC = coldestPanC(decision);
    if (site.drain === 'none' || panC === null || panC > settings.frostTemperatureC) return;
    if (decision.belief.water === 'empty' || isKeptWarm(seen, site)) return;
    const { pumpFraction, drainOpen } = decision.outputs;
    return pumpFraction === 0 && drainOpen
      ? undefined
      : `pan at ${panC}, outputs ${pumpFraction}, ${drainOpen}`;
  }),
};

export const frostIsAnswered: Invariant = {
  name: 'frost-is-answered',
  promise:
    'Two samples in a row of one pan thermometer, one second or more apart, fresh, in range and at the frost temperature or below: the pump stands at the step that hears the second.',
  exceptions: [corner, keepWarmException, secondSample],
  watch: ({ site, settings }) => {
    let coldBefore: readonly string[] = [];
    return (seen) => {
      const apart = (seen.input.elapsedMs ?? 0) >= 1000;
      const cold = panChannels.filter((channel) => isColdSample(seen, channel, settings.frostTemperatureC));
      const twice = apart && cold.some((channel) => coldBefore.includes(channel));
      coldBefore = apart ? cold : [];
      if (!twice || site.drain === 'none' || isKeptWarm(seen, site) || !isPumping(seen.decision)) return;
      return `pumping at the second cold sample of ${cold.join(', ')}`;
    };
  },
};

function isColdSample({ input, decision }: Seen, channel: (typeof panChannels)[number], frostC: number) {
  const raw = input.readings[channel];
  if (raw === undefined || raw.value === null || raw.fault !== undefined || raw.ageMs > 100) return false;
  const inRange = raw.value >= channelMeaning[channel].least;
  return inRange && raw.value <= frostC && usable(decision, channel) !== null;
}

export const frostStoreStands: Invariant = {
  name: 'frost-store-stands',
  promise: 'While the store bottom reads the frost temperature or below, no water is moved.',
  exceptions: [],
  watch: eachStep(({ decision }, { settings }) => {
    const storeC = usable(decision, 'storeBottomC');
    if (storeC === null || storeC > settings.frostTemperatureC || !isPumping(decision)) return;
    return `pumping with the store at ${storeC}`;
  }),
};

export const frostBlindOpensDrain: Invariant = {
  name: 'frost-blind-opens-drain',
  promise:
    'With no usable pan reading, and the air at the blind frost temperature or below or not known either with no season set, the pump stands and the drain is open.',
  exceptions: [corner],
  watch: eachStep(({ decision }, { site, settings }) => {
    if (site.drain === 'none' || coldestPanC(decision) !== null) return;
    const airC = usable(decision, 'ambientC');
    const frost = airC === null ? site.frostSeason === undefined : airC <= settings.blindFrostAmbientC;
    const { pumpFraction, drainOpen } = decision.outputs;
    return frost && !(pumpFraction === 0 && drainOpen) ? `blind, air at ${airC}` : undefined;
  }),
};
