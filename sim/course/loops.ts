import type { Channel } from '../../shared-types/channels.ts';
import { type Site, siteSchema } from '../../shared-types/site.ts';
import { tryLoop } from '../survey/trial.ts';
import type { LoopShape, Place } from './place.ts';

/** Plumbing and sensors of a kind of loop: from well equipped to the least that a loop can run with. */
const kinds = {
  'open-high': {
    plumbing: 'open-store',
    outlet: 'high-with-low-drain',
    drain: 'drain-valve',
    sensors: [
      'panOutletC',
      'panSheetC',
      'panInletC',
      'panLevelMm',
      'storeBottomC',
      'storeTopC',
      'ambientC',
      'irradianceWM2',
      'flowLMin',
      'pumpPowerW',
    ],
  },
  'open-low': {
    plumbing: 'open-store',
    outlet: 'low',
    drain: 'pump-stop',
    sensors: ['panOutletC', 'panSheetC', 'storeBottomC', 'storeTopC', 'ambientC'],
  },
  reservoir: {
    plumbing: 'reservoir',
    outlet: 'high-with-low-drain',
    drain: 'drain-valve',
    sensors: [
      'panOutletC',
      'panSheetC',
      'panInletC',
      'panLevelMm',
      'reservoirC',
      'storeBottomC',
      'storeTopC',
      'ambientC',
      'humidityFraction',
      'flowLMin',
    ],
  },
} as const satisfies Record<LoopShape['kind'], { sensors: readonly Channel[] } & Record<string, unknown>>;

const unitOf = (channel: Channel) => {
  if (channel.endsWith('WM2')) return 'W/m2';
  if (channel.endsWith('LMin')) return 'L/min';
  if (channel.endsWith('Mm')) return 'mm';
  if (channel.endsWith('Fraction')) return 'fraction';
  return channel.endsWith('W') ? 'W' : 'C';
};

/** So hot no store gets here: the course is about heat, not about limits. */
const storeLimitC = 80;
/** Room in the store beyond the pan's water: what fills the pipes, and some to spare. */
const headroomFactor = 1.25;
/** Times are set this much longer than they were measured, as an owner would after the first runs. */
const timeFactor = 1.15;

/**
 * A loop of a shape at a place, its fill and drain times measured in still air.
 *
 * @throws when the loop never fills or never empties.
 */
export function siteOf(shape: LoopShape, { location }: Place): Site {
  const content = contentOf(shape, location);
  const { fillS, drainS } = tryLoop(siteSchema.parse(content), { draw: 'none' });
  if (fillS === null || drainS === null) throw new Error(`${shape.name} does not fill, or does not empty`);
  const settings = {
    storeLimitC,
    fillTimeS: Math.ceil(timeFactor * fillS),
    fillTimeoutS: Math.ceil(1.5 * timeFactor * fillS),
    drainTimeS: Math.ceil(timeFactor * drainS),
  };
  return siteSchema.parse({ ...content, settings });
}

function contentOf(shape: LoopShape, location: Site['location']) {
  const { plumbing, outlet, drain, sensors } = kinds[shape.kind];
  const panL = shape.wettedAreaM2 * shape.waterDepthM * 1000;
  return {
    schema: 1,
    name: shape.name,
    title: `Course loop ${shape.name}`,
    timeZone: 'Etc/UTC',
    location,
    pan: {
      grossAreaM2: 1.04 * shape.wettedAreaM2,
      wettedAreaM2: shape.wettedAreaM2,
      waterDepthM: shape.waterDepthM,
      linerLimitC: 110,
      heightAboveStoreM: 1.2,
    },
    plumbing,
    outlet,
    drain,
    pump: { ratedFlowLMin: shape.flowLMin, ratedHeadM: 4, ratedPowerW: shape.powerW },
    store: {
      volumeL: shape.storeL,
      headroomL: Math.ceil(headroomFactor * panL),
      heightM: 1.4,
      lossWK: 0.15 * Math.sqrt(shape.storeL),
    },
    sensors: Object.fromEntries(sensors.map((channel) => [channel, { key: channel, unit: unitOf(channel) }])),
    link: { kind: 'serial', path: '/dev/null' },
    control: { stepS: 10 },
  };
}
