import type { Channel } from '../../../shared-types/channels.ts';
import type { Comparison } from '../../../shared-types/tuning.ts';
import { clonePlant } from '../../course/best/clone-plant.ts';
import type { DrawCourse } from '../../plant/draws.ts';
import type { PlantState } from '../../plant/state.ts';
import type { Weather } from '../../weather/weather.ts';
import { noError, type OwnSky, type PossibleLoop, usualLoop } from '../possible-loop.ts';
import { assumedAirC } from './assumed-air.ts';
import { type Followed, type FollowOptions, follow } from './follow.ts';
import { makeUpOf } from './make-up.ts';
import { panOffsetOf } from './pan-offset.ts';
import { passingCloudWM2 } from './passing-cloud.ts';
import { putRight } from './put-right.ts';
import { darkZenithDeg, type SkyColumns, skyColumns, weatherOf } from './sky-columns.ts';
import type { LoggedSpan } from './span.ts';

/** What costs a search, and hardly depends on the loop. */
export interface Found {
  /** Cold water that follows what is drawn [°C]. */
  readonly makeUpC: number;
  /** What the pan's thermometer shows more than the store bottom's when both are alike [K]. */
  readonly panOffsetK: number;
}

/** The world of a logged day, in which a loop can live that day again. */
export interface LoggedWorld {
  readonly fromMs: number;
  readonly toMs: number;
  readonly weather: Weather;
  readonly draws: DrawCourse;
  /** The loop as it stood when the day began; a new one at each call. */
  begin(): PlantState;
  /** What each sensor of the logged loop shows wrong, as far as fit and log tell. */
  readonly sensorErrors: PossibleLoop['sensorErrors'];
  /** Heat that a plant brought home that was driven as the logged loop [J]. */
  readonly followedHomeJ: number;
  /** What was looked for once: serves the worlds of other loops on the same day. */
  readonly found: Found;
  readonly origins: Comparison['world'];
  readonly coveredFraction: number;
  readonly remarks: readonly string[];
}

/** How freely sun and air walk from window to window where they are not measured; design choices. */
const freeFactor = 0.3;
const freeAirK = 0.3;
/** By night; by day the sky goes from what the one night told to what the next does. */
const freeSkyWM2 = 10;

/**
 * Makes the world of a logged day for a loop: what was measured as it was measured, less what its sensors are known to
 * show wrong; what was not such that a plant driven as the logged loop goes where that loop went.
 *
 * @param shown - The day as its sensors showed it. @param before - What was looked for with another loop on the same day.
 */
export function worldOf(shown: LoggedSpan, loop: PossibleLoop = usualLoop, before?: Found): LoggedWorld {
  const { traits } = loop;
  const span = putRight(shown, loop);
  const sky = withOwnSky(
    skyColumns(span, () => assumedAirC(span)),
    loop.sky,
  );
  const { irradiance, air } = sky.origins;
  const known = irradiance === 'measured' && air === 'measured';
  const steps = {
    factor: irradiance === 'measured' ? 0 : freeFactor,
    airK: air === 'measured' ? 0 : freeAirK,
    skyWM2: known && sky.longWaveWM2 === undefined ? freeSkyWM2 : 0,
  };
  const options = { traits, steps, panOffsetK: 0 };
  const found = before ?? search(span, sky, options);
  const { makeUpC, panOffsetK } = found;
  const followed = follow(span, sky, { steps, panOffsetK, traits: { ...traits, makeUpC } });
  return {
    fromMs: span.dayFromMs,
    toMs: span.dayToMs,
    weather: weatherOf(followed.conditions),
    draws: followed.draws,
    begin: () => clonePlant(followed.begin),
    sensorErrors: allErrors(loop, followed.residuals.offsetsK()),
    followedHomeJ: followed.homeJ,
    found,
    origins: { ...sky.origins, draws: drawsOrigin(span) },
    coveredFraction: span.coveredFraction,
    remarks: [...span.remarks, ...worldRemarks(span, followed)],
  };
}

/** What is left over against the followed loop comes on top of what was known. */
function allErrors(
  { sensorErrors }: PossibleLoop,
  leftOverK: Readonly<Partial<Record<Channel, number>>>,
): PossibleLoop['sensorErrors'] {
  const all = { ...sensorErrors };
  for (const channel of Object.keys(leftOverK) as Channel[]) {
    const { share, offset } = all[channel] ?? noError;
    all[channel] = { share, offset: offset + (1 + share) * (leftOverK[channel] ?? 0) };
  }
  return all;
}

function search(span: LoggedSpan, sky: SkyColumns, options: FollowOptions): Found {
  const makeUpC = makeUpOf(span, sky, options);
  const traits = { ...options.traits, makeUpC };
  return { makeUpC, panOffsetK: panOffsetOf(span, sky, { ...options, traits }) };
}

/** Where the sky is told by formula; what clouds do can be told where the sun is measured. The nights tell by themselves. */
function withOwnSky(sky: SkyColumns, { cloudShare, moreWM2 }: OwnSky): SkyColumns {
  if (sky.longWaveWM2 !== undefined) return sky;
  const clouds = sky.origins.irradiance === 'measured' ? passingCloudWM2(sky) : undefined;
  return {
    ...sky,
    moreSkyWM2: sky.sun.zenithDeg.map((zenithDeg, i) =>
      zenithDeg > darkZenithDeg ? 0 : moreWM2 + cloudShare * (clouds?.[i] ?? 0),
    ),
  };
}

function drawsOrigin({ minutes }: LoggedSpan): Comparison['world']['draws'] {
  return minutes.values.storeBottomC === undefined ? 'assumed' : 'reconstructed';
}

function worldRemarks({ minutes }: LoggedSpan, { draws }: Followed): string[] {
  const remarks: string[] = [];
  if (minutes.values.storeBottomC === undefined)
    remarks.push('Without a sensor at the store bottom no draw can be told: none is assumed.');
  else if (draws.wantedKgS.every((wanted) => wanted === 0))
    remarks.push('No draw shows in the store bottom.');
  return remarks;
}
