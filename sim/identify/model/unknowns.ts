import type { Channel } from '../../../shared-types/channels.ts';
import type { Site } from '../../../shared-types/site.ts';
import type { SensorError } from '../../../shared-types/tuning.ts';
import { makes, numberOf } from '../../plant/makes.ts';
import { type TraitName, traitDeclarations } from '../../plant/traits.ts';
import { skyStepMin } from '../possible-loop.ts';
import { passingShare } from '../world/passing-cloud.ts';

/** Something that a fit looks for: what is known of it beforehand, and how far it is moved to see what it does. */
export interface Unknown {
  /** The trait that it is; undefined for what is wrong with a sensor or with the sky. */
  readonly trait?: TraitName;
  /** What it is that a sensor shows wrong; undefined for all else. */
  readonly sensor?: Pick<SensorError, 'channel' | 'kind'>;
  readonly key: string;
  readonly mean: number;
  /** Standard deviation of what is known beforehand. */
  readonly sd: number;
  readonly least: number;
  readonly most: number;
  /** The one day that it touches; undefined: all. */
  readonly day?: number;
  /**
   * Taken into account, but not looked for: the days would tell it only by small print of the model. What it may be
   * off by goes into the errors of all others.
   */
  readonly considered?: true;
}

/**
 * How far to both sides of the usual value a trait is looked for, before anything was measured. The collector's four
 * cover 0.85 to 0.96, 0.01 to 0.04 s/m, 8 to 15 W/m2K and 2 to 5 J/m3K, ranges from memory; the rest are design
 * choices, wide enough for what a builder may have done.
 */
const reach = {
  opticalEfficiency: 0.055,
  windOpticalSM: 0.015,
  stillLossWM2K: 3.5,
  windLossJM3K: 1.5,
  contactWM2K: 150,
  depthFactor: 0.15,
  flowFactor: 0.2,
  pipeLossWMK: 0.15,
  exchangerWM2K: 30,
} as const satisfies Partial<Record<TraitName, number>>;

type LookedFor = keyof typeof reach;

/** A pipe's water is a tenth of a kelvin colder at its end: less than two thermometers differ by. */
export const consideredTraits: readonly TraitName[] = ['pipeLossWMK'];

/** Standard deviation over half the width of an even distribution. */
const evenSd = 1 / Math.sqrt(3);

function traitUnknown(trait: LookedFor): Unknown {
  const { default: mean, least, most } = traitDeclarations[trait];
  const unknown: Unknown = { trait, key: trait, mean, sd: evenSd * reach[trait], least, most };
  return consideredTraits.includes(trait) ? { ...unknown, considered: true } : unknown;
}

export const windTraits: readonly TraitName[] = ['windOpticalSM', 'windLossJM3K'];

/** The traits that a loop's fit looks for or considers; those of the wind only where it is measured. */
export function traitUnknowns({ plumbing }: Site, windMeasured: boolean): Unknown[] {
  return (Object.keys(reach) as LookedFor[])
    .filter((name) => name !== 'exchangerWM2K' || plumbing === 'reservoir')
    .filter((name) => windMeasured || !windTraits.includes(name))
    .map(traitUnknown);
}

/** Sensors that err by a constant, and those that err by a share of what there is. */
const offsetChannels = [
  'panSheetC',
  'panOutletC',
  'panInletC',
  'storeBottomC',
  'reservoirC',
  'ambientC',
  'panLevelMm',
  'longWaveWM2',
] as const satisfies readonly Channel[];
const scaleChannels = ['irradianceWM2', 'windMs', 'flowLMin'] as const satisfies readonly Channel[];
/** An assumed wind may be wrong by this share; a design choice. */
const assumedWindSd = 0.5;

/**
 * A sky that is told by formula may be off by this [W/m2], and some hours later by something else: a cloud by night is
 * not seen, and one before the sun is not the whole sky. From clear to closed are some 80 W/m2. Design choices.
 */
const skySdWM2 = 30;
export const cloudKey = 'share of passing clouds';

export const offsetKey = (channel: Channel) => `offset of ${channel}`;
export const scaleKey = (channel: Channel) => `scale of ${channel}`;
export const skyKey = (day: number, node: number) => `sky of day ${day} at node ${node}`;

/**
 * The sun's sensor may err by more than all that the days tell of the loop, and what is made of a day rests on it: its
 * share is looked for.
 */
const looked = (channel: Channel) =>
  channel === 'irradianceWM2'
    ? { sensor: { channel, kind: 'share' as const } }
    : { considered: true as const };

const free = { mean: 0, least: Number.NEGATIVE_INFINITY, most: Number.POSITIVE_INFINITY };

/** What sensors and sky may be off by. @param dayMinutes - How long each of the days is that are fitted together. */
export function errorUnknowns(channels: readonly Channel[], dayMinutes: readonly number[]): Unknown[] {
  const make = (channel: Channel) => makes[numberOf[channel]] as (typeof makes)[number];
  const offsets = offsetChannels
    .filter((channel) => channels.includes(channel))
    .map((channel) => ({
      ...free,
      sensor: { channel, kind: 'offset' as const },
      key: offsetKey(channel),
      sd: evenSd * make(channel).offset,
    }));
  const scales = scaleChannels
    .filter((channel) => channels.includes(channel))
    .map((channel) => ({
      ...free,
      key: scaleKey(channel),
      sd: evenSd * make(channel).scale,
      ...looked(channel),
    }));
  const wind = channels.includes('windMs')
    ? []
    : [{ ...free, key: scaleKey('windMs'), sd: assumedWindSd, considered: true as const }];
  const skies = channels.includes('longWaveWM2') ? [] : skyUnknowns(dayMinutes);
  return [...offsets, ...scales, ...wind, ...skies];
}

/** What a sky that is told by formula may be off by: the share of its passing clouds first, then day by day. */
export function skyUnknowns(dayMinutes: readonly number[]): Unknown[] {
  const days = dayMinutes.flatMap((minutes, day) =>
    Array.from({ length: Math.ceil(minutes / skyStepMin) + 1 }, (_, node) => ({
      ...free,
      key: skyKey(day, node),
      sd: skySdWM2,
      day,
    })),
  );
  return [{ ...free, key: cloudKey, ...passingShare }, ...days];
}
