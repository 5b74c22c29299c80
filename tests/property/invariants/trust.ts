import { type Channel, channelMeaning } from '../../../shared-types/channels.ts';
import type { RawReading } from '../../../shared-types/readings.ts';
import {
  eachStep,
  type Invariant,
  isByHazard,
  isPumping,
  isRestart,
  type Seen,
  usable,
} from './invariant.ts';

const cornerKeptWarm =
  'A pan that cannot be emptied is circulated against a measured frost even without a store reading.';

export const blindIsSafe: Invariant = {
  name: 'blind-is-safe',
  promise:
    'Without a usable reading of the store bottom, or of the pan, the pump stands, and what has a drain opens it.',
  exceptions: [cornerKeptWarm],
  watch: eachStep(({ decision }, { site }) => {
    const pan = usable(decision, 'panOutletC') ?? usable(decision, 'panSheetC');
    if (pan !== null && usable(decision, 'storeBottomC') !== null) return;
    const { outputs, reasons } = decision;
    if (site.drain === 'none' && reasons.phase.code === 'frost-measured') return;
    if (isPumping(decision) || outputs.exchangerPumpOn) return 'pumping blindly';
    return site.drain !== 'none' && !outputs.drainOpen ? 'blind with a closed drain' : undefined;
  }),
};

/** What arrives closer to the sample before is the same sample seen again [ms]. */
const sameSampleMs = 20;

export const staleIsNotUsed: Invariant = {
  name: 'stale-is-not-used',
  promise:
    'What is missing or too old is failed, and what comes in unreadable or out of range is never good.',
  exceptions: ['What comes within 20 ms of the sample before counts as that sample.'],
  watch: eachStep(({ input, decision }, { site, settings }) => {
    for (const name in site.sensors) {
      const channel = name as Channel;
      const raw = input.readings[channel];
      const quality = decision.belief.readings[channel]?.quality;
      if (quality === undefined) return `${channel} is not judged`;
      const old = raw === undefined || raw.ageMs > settings.staleAfterS * 1000;
      if (old && quality !== 'failed') return `${channel} is used, yet missing or stale`;
      const isNew = raw !== undefined && (input.elapsedMs ?? Infinity) - raw.ageMs > sameSampleMs;
      if (isNew && quality === 'good' && isAbsurd(raw, channel)) return `${channel} is good, yet absurd`;
    }
    return undefined;
  }),
};

function isAbsurd({ value, fault }: RawReading, channel: Channel): boolean {
  const { least, most } = channelMeaning[channel];
  return fault !== undefined || value === null || !(value >= least && value <= most);
}

/** What an engine may say of a reading only when it did not hear it rightly. */
const unheard: ReadonlySet<string> = new Set(['missing', 'stale', 'open-circuit', 'short-circuit']);

export const soundIsHeard: Invariant = {
  name: 'sound-is-heard',
  promise:
    'A fresh reading in range of a sensor that the site has is never called missing, old or disconnected.',
  exceptions: ['What comes within 20 ms of the sample before counts as that sample.'],
  watch: eachStep(({ input, decision }, { site }) => {
    for (const name in site.sensors) {
      const channel = name as Channel;
      const raw = input.readings[channel];
      const isNew = raw !== undefined && (input.elapsedMs ?? Infinity) - raw.ageMs > sameSampleMs;
      const trusted = decision.belief.readings[channel];
      if (!isNew || raw.ageMs > 100 || isAbsurd(raw, channel) || trusted?.quality !== 'failed') continue;
      if (unheard.has(trusted.cause)) return `${channel} is sound, yet called ${trusted.cause}`;
    }
    return undefined;
  }),
};

export const restartIsSafe: Invariant = {
  name: 'restart-is-safe',
  promise:
    'After a restart, or a gap in which the device has let its outputs fall, the first step pumps nothing; the pan counts as neither empty nor full until it is proven.',
  exceptions: [cornerKeptWarm],
  watch: eachStep((seen, { site }) => {
    if (!isRestart(seen, site) || site.drain === 'none') return;
    const { decision } = seen;
    if (isPumping(decision)) return 'pumping at a restart';
    const assumed = usable(decision, 'panLevelMm') === null && decision.belief.water !== 'unknown';
    return assumed ? `taken for ${decision.belief.water} at a restart` : undefined;
  }),
};

export const doubtStartsNothing: Invariant = {
  name: 'doubt-starts-nothing',
  promise:
    'The loop never starts its pump for heat on a doubtful store bottom, nor on a pan whose outlet or sheet has just jumped, nor where neither of the two is good.',
  exceptions: [],
  watch: eachStep((seen, { site }) => {
    if (!startsForHeat(seen)) return;
    const { panOutletC, panSheetC, storeBottomC } = seen.decision.belief.readings;
    if (isRestart(seen, site)) return 'started at a restart';
    if (storeBottomC?.quality !== 'good') return 'started on a doubtful store';
    const pan = [panOutletC, panSheetC];
    if (pan.some((reading) => reading?.quality === 'doubtful' && reading.cause === 'jumped'))
      return 'started on a pan that has just jumped';
    return pan.some((reading) => reading?.quality === 'good') ? undefined : 'started on a doubtful pan';
  }),
};

function startsForHeat({ before, decision }: Seen): boolean {
  const started = before.outputs.pumpFraction === 0 && isPumping(decision);
  const { code } = decision.reasons.phase;
  return started && (code === 'filling-for-heat' || code === 'circulating-for-heat');
}

export const protectionStands: Invariant = {
  name: 'protection-stands',
  promise: 'A protection whose goal is an empty pan lets no pump run.',
  exceptions: [
    'A frost that is answered by keeping warm, and a hot liner that is cooled by the store or by dumping heat, ask for the pump themselves.',
  ],
  watch: eachStep(({ decision }) => {
    const { code } = decision.reasons.phase;
    const asksForPump = code === 'frost-measured' || code === 'liner-heat' || code === 'dumping-heat';
    return isByHazard(decision) && !asksForPump && isPumping(decision) ? `pumping under ${code}` : undefined;
  }),
};
