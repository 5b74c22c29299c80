import type { Channel } from '../../../shared-types/channels.ts';
import type { Comparison, Origin } from '../../../shared-types/tuning.ts';
import { clonePlant } from '../../course/best/clone-plant.ts';
import type { DrawCourse } from '../../plant/draws.ts';
import type { PlantState } from '../../plant/state.ts';
import { waterJKgK, waterKgL } from '../../plant/water.ts';
import type { Weather } from '../../weather/weather.ts';
import { noError, type PossibleLoop, usualLoop } from '../possible-loop.ts';
import { assumedAirC } from './assumed-air.ts';
import { type Followed, follow } from './follow.ts';
import { makeUpOf } from './make-up.ts';
import { withOwnSky } from './own-sky.ts';
import { panOffsetOf } from './pan-offset.ts';
import { putRight } from './put-right.ts';
import { skyColumns, weatherOf } from './sky-columns.ts';
import type { LoggedSpan } from './span.ts';
import type { Nudge } from './store-sensors.ts';

/** The world of a logged day, in which a loop can live that day again. */
export interface LoggedWorld {
  readonly fromMs: number;
  readonly toMs: number;
  readonly weather: Weather;
  readonly draws: DrawCourse;
  /** By how much the store was warmer at an instant than draws and loop explain; undefined at most of them. */
  nudgeAt(atMs: number): Nudge | undefined;
  /** The loop as it stood when the day began; a new one at each call. */
  begin(): PlantState;
  /** What each sensor of the logged loop shows wrong, as far as fit and log tell. */
  readonly sensorErrors: PossibleLoop['sensorErrors'];
  /** Heat that a plant brought home that was driven as the logged loop [J]. */
  readonly followedHomeJ: number;
  /** What the pan's thermometer was found to show more than the store bottom's when both are alike [K]. */
  readonly panOffsetK: number;
  readonly origins: Comparison['world'];
  readonly coveredFraction: number;
  readonly remarks: readonly string[];
}

/** How freely sun and air walk from window to window where they are not measured; design choices. */
const freeFactor = 0.3;
const freeAirK = 0.3;

/**
 * Makes the world of a logged day for a loop: what was measured as it was measured, less what its sensors are known to
 * show wrong; what was not such that a plant driven as the logged loop goes where that loop went.
 *
 * @param shown - The day as its sensors showed it. @param panOffsetBeforeK - What was found with another loop on the same
 * day: it costs a search, and hardly depends on the loop.
 */
export function worldOf(
  shown: LoggedSpan,
  loop: PossibleLoop = usualLoop,
  panOffsetBeforeK?: number,
): LoggedWorld {
  const span = putRight(shown, loop);
  const sky = withOwnSky(
    skyColumns(span, () => assumedAirC(span)),
    loop.sky,
  );
  const { irradiance, air } = sky.origins;
  const steps = {
    factor: irradiance === 'measured' ? 0 : freeFactor,
    airK: air === 'measured' ? 0 : freeAirK,
  };
  const traits = { ...loop.traits, makeUpC: makeUpOf(span, loop.traits) };
  const panOffsetK = panOffsetBeforeK ?? panOffsetOf(span, sky, { traits, steps, panOffsetK: 0 });
  const followed = follow(span, sky, { traits, steps, panOffsetK });
  return {
    fromMs: span.dayFromMs,
    toMs: span.dayToMs,
    weather: weatherOf(followed.conditions),
    draws: followed.draws,
    nudgeAt: (atMs) => nudgeAt(followed, atMs),
    begin: () => clonePlant(followed.begin),
    sensorErrors: allErrors(loop, followed.residuals.offsetsK()),
    followedHomeJ: followed.homeJ,
    panOffsetK,
    origins: { ...sky.origins, draws: drawsOrigin(span) },
    coveredFraction: span.coveredFraction,
    remarks: [...span.remarks, ...worldRemarks(span, followed), ...pairRemarks(span, irradiance)],
  };
}

/** Each stretch of draws ends with one. */
function nudgeAt({ draws: { fromMs, stepMs }, nudges }: Followed, atMs: number): Nudge | undefined {
  const ended = (atMs - fromMs) / stepMs - 1;
  return Number.isInteger(ended) ? nudges[ended] : undefined;
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

/** Heat that flows for a tenth of a kelvin, in watts for each litre a minute. */
const tenthKelvinWMin = (0.1 * waterJKgK * waterKgL) / 60;

/** Where two thermometers tell the sun, their difference tells it as long as water flows. */
function pairRemarks({ site, minutes }: LoggedSpan, irradiance: Origin): string[] {
  if (irradiance === 'measured' || minutes.values.storeBottomC === undefined) return [];
  const errorWM2 = (tenthKelvinWMin * site.pump.ratedFlowLMin) / site.pan.wettedAreaM2;
  return [
    `No sensor of the sun: while water flows, 0.1 K between two thermometers is ${errorWM2.toFixed(0)} W/m2 of sun. ` +
      'Hold both in one bucket of water and write what they differ by into the site file, as the offset of one of them.',
  ];
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
