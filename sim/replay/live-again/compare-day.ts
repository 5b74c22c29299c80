import { isDeepStrictEqual } from 'node:util';
import type { LogReader } from '../../../controller/log/log.ts';
import type { Settings } from '../../../shared-types/settings.ts';
import type { Comparison, LoopFit } from '../../../shared-types/tuning.ts';
import { bestOf } from '../../course/best/best.ts';
import { type LoggedSpan, readSpan } from '../../identify/world/span.ts';
import { type LoggedWorld, worldOf } from '../../identify/world/world.ts';
import { rulesOf } from '../rules.ts';
import { takeUp } from '../taking-up.ts';
import { absorbedOf } from './absorbed.ts';
import { estimateOf, outcomeOf } from './bands.ts';
import { leftGroundOf } from './left-ground.ts';
import { liveDay } from './live-day.ts';
import type { Lived } from './lived.ts';
import { loggedOf } from './logged-day.ts';
import { possibleLoops, underTheirSkies } from './possible-loops.ts';

export interface CompareOptions {
  /** Fit of the loop that was logged; null: usual traits, with the wide bands of what is not known. */
  readonly fit: LoopFit | null;
  /** Why there is no fit; absent where none was looked for. */
  readonly whyNoFit?: string;
  /** Loops that are drawn from what is uncertain, for the bands; 0 and more. */
  readonly samples: number;
  /** Picks the noise of the sensors and the drawn loops. */
  readonly seed: number;
  /** Whether to look for the best that anybody could do; takes some seconds. */
  readonly best?: boolean;
  /** Told now and then what share is done, 0 to 1. @returns false to give up. */
  readonly goOn?: (doneFraction: number) => boolean;
}

export const usualSamples = 12;

/**
 * Lives a logged day twice more, in the world of that day as far as the log tells it: under the settings of then,
 * and under others. The engine is that of now on both sides.
 *
 * Both sides meet the same weather, draws, sensors and noise, so that what is wrong with the world or with the loop
 * largely cancels in their difference. What the log metered is told beside them and corrects nothing: a meter of
 * cheap sensors errs by more than a loop that followed them.
 *
 * @returns undefined when it was given up. @throws RangeError with the reason when too little of the day is kept.
 */
export function compareDay(
  reader: LogReader,
  day: string,
  settings: Settings,
  options: CompareOptions,
): Comparison | undefined {
  const { fit, samples, seed, best = false, goOn = () => true } = options;
  const read = readSpan(reader, day);
  if (!read.ok) throw new RangeError(read.why);
  const { span } = read;
  const taken = takeUp(reader, span.first, rulesOf(reader), undefined);
  const then = courseOf(span);
  const same = span.settings.every(({ settings: own }) => isDeepStrictEqual(own, settings));
  const sides: Sides = { base: [], tried: [] };
  const loops = underTheirSkies(span, possibleLoops(fit, samples, seed), seed);
  const worlds: LoggedWorld[] = [];
  for (const [index, loop] of loops.entries()) {
    if (!goOn(index / loops.length)) return undefined;
    const own = worldOf(span, loop, worlds[0]?.panOffsetK);
    worlds.push(own);
    const live = { span, world: own, state: taken.state, seed };
    const base = liveDay({ ...live, settingsAt: then });
    sides.base.push(base);
    sides.tried.push(same ? base : liveDay({ ...live, settingsAt: () => settings }));
  }
  const [world] = worlds;
  if (world === undefined || !goOn(1)) return undefined;
  const comparison = comparisonOf(span, settings, sides, world);
  return {
    ...comparison,
    logged: loggedOf(reader, day),
    bestPossibleJ: best ? bestPossibleJ(span, world) : null,
    loop: loopText(options),
    absorbed: absorbedOf(worlds),
    remarks: [...world.remarks, ...remarksOn(span, taken.from)],
  };
}

interface Sides {
  readonly base: Lived[];
  readonly tried: Lived[];
}

/** The settings that were in force at each instant of the day. */
function courseOf({ settings }: LoggedSpan): (atMs: number) => Settings {
  const [first] = settings;
  return (atMs) => (settings.findLast(({ fromMs }) => fromMs <= atMs) ?? first)?.settings as Settings;
}

type Told = Pick<
  Comparison,
  | 'day'
  | 'settingsThen'
  | 'settingsTried'
  | 'base'
  | 'tried'
  | 'heatGainJ'
  | 'curves'
  | 'world'
  | 'leftGround'
>;

function comparisonOf(
  span: LoggedSpan,
  settings: Settings,
  { base, tried }: Sides,
  world: LoggedWorld,
): Told {
  const { linerLimitC } = span.site.pan;
  const [baseLife, triedLife] = [base[0] as Lived, tried[0] as Lived];
  return {
    day: span.day,
    settingsThen: span.settings.at(-1)?.settings as Settings,
    settingsTried: settings,
    base: outcomeOf(base, linerLimitC),
    tried: outcomeOf(tried, linerLimitC),
    heatGainJ: estimateOf(tried.map(({ heatHomeJ }, i) => heatHomeJ - (base[i] as Lived).heatHomeJ)),
    curves: { base: baseLife.curves, tried: triedLife.curves },
    world: world.origins,
    leftGround: leftGroundOf(span, triedLife.curves),
  };
}

function bestPossibleJ({ site, day }: LoggedSpan, world: LoggedWorld): number {
  const { weather, fromMs, toMs, begin } = world;
  return bestOf({ name: day, site, weather, fairWeather: weather, seed: 0, fromMs, toMs, plant: begin })
    .boundJ;
}

function loopText({ fit, whyNoFit }: CompareOptions): Comparison['loop'] {
  if (fit === null) {
    const why = whyNoFit === undefined ? '' : `, since ${whyNoFit}`;
    return {
      origin: 'assumed',
      text: `No fit of this loop is used${why}: usual values of such loops, in wide ranges.`,
    };
  }
  const days = fit.days.length === 1 ? 'one day' : `${fit.days.length} days`;
  return { origin: 'reconstructed', text: `The loop as it was fitted to ${days} of its log.` };
}

function remarksOn({ settings, dayFromMs }: LoggedSpan, taken: 'saved' | 'before-gap' | 'nothing'): string[] {
  const remarks: string[] = [];
  if (taken !== 'saved')
    remarks.push('No usable state of the engine was kept from before the day; it begins anew.');
  if (settings.slice(1).some(({ fromMs }) => fromMs > dayFromMs))
    remarks.push('The settings were changed on that day; the last of them are named.');
  return remarks;
}
