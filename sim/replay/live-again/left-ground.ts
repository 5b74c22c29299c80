import { type Channel, channelMeaning } from '../../../shared-types/channels.ts';
import type { DayCurves } from '../../../shared-types/log.ts';
import type { Comparison } from '../../../shared-types/tuning.ts';
import { wetPhases } from '../../identify/world/phases.ts';
import type { LoggedSpan } from '../../identify/world/span.ts';

type LeftGround = Comparison['leftGround'][number];

/** Beyond what was logged by so much is beyond it [K]; a design choice. */
const marginK = 2;
/** Shorter than this is not told [ms]. */
const leastMs = 10 * 60_000;
const marginSpeed = 0.05;
const watched: readonly Channel[] = ['panSheetC', 'panOutletC', 'storeBottomC', 'storeTopC'];

/** Where a loop that lived a day otherwise went where the log of that day, and of the day before, never was. */
export function leftGroundOf(span: LoggedSpan, curves: DayCurves): LeftGround[] {
  return [
    ...watched.flatMap((channel) => beyondTemperatures(span, curves, channel)),
    ...otherSpeeds(span, curves),
    ...wetWhereDry(span, curves),
  ].toSorted((a, b) => a.fromMs - b.fromMs);
}

function beyondTemperatures(
  { minutes }: LoggedSpan,
  { atMs, series }: DayCurves,
  channel: Channel,
): LeftGround[] {
  const good = minutes.values[channel]?.filter((value) => !Number.isNaN(value));
  const curve = series[channel];
  if (good === undefined || good.length === 0 || curve === undefined) return [];
  const least = good.reduce((low, value) => Math.min(low, value));
  const most = good.reduce((high, value) => Math.max(high, value));
  const { title } = channelMeaning[channel];
  const text = (word: string, boundC: number) =>
    `${title}: ${word} than the log ever shows (${boundC.toFixed(0)} °C).`;
  const hotter = stretches(atMs, (i) => (curve[i] ?? Number.NaN) > most + marginK);
  const colder = stretches(atMs, (i) => (curve[i] ?? Number.NaN) < least - marginK);
  return [
    ...hotter.map((stretch) => ({ ...stretch, text: text('hotter', most) })),
    ...colder.map((stretch) => ({ ...stretch, text: text('colder', least) })),
  ];
}

function otherSpeeds({ minutes }: LoggedSpan, { atMs, pumpFraction }: DayCurves): LeftGround[] {
  const logged = new Set<number>();
  for (const drives of minutes.drives)
    for (const { outputs } of drives) if (outputs.pumpFraction > 0) logged.add(outputs.pumpFraction);
  const known = [...logged];
  const isOther = (speed: number) => speed > 0 && known.every((own) => Math.abs(own - speed) > marginSpeed);
  return stretches(atMs, (i) => isOther(pumpFraction[i] as number)).map((stretch) => ({
    ...stretch,
    text: 'The pump runs at a speed that the log does not have.',
  }));
}

/** Water in the pan at a time of the day at which the logged pan was empty. */
function wetWhereDry({ phases }: LoggedSpan, { atMs, phases: own }: DayCurves): LeftGround[] {
  const loggedWet = (ms: number) =>
    wetPhases.includes(phases.findLast(({ fromMs }) => fromMs <= ms)?.phase ?? 'empty');
  const ownWet = (ms: number) =>
    wetPhases.includes(own.findLast(({ fromMs }) => fromMs <= ms)?.phase ?? 'empty');
  return stretches(atMs, (i) => ownWet(atMs[i] as number) && !loggedWet(atMs[i] as number)).map(
    (stretch) => ({
      ...stretch,
      text: 'The pan holds water while the logged one was empty.',
    }),
  );
}

/** Stretches in which something holds all the while. */
function stretches(
  atMs: readonly number[],
  holds: (index: number) => boolean,
): { readonly fromMs: number; readonly toMs: number }[] {
  const found: { fromMs: number; toMs: number }[] = [];
  let open: { fromMs: number; toMs: number } | undefined;
  for (const [index, ms] of atMs.entries()) {
    if (!holds(index)) {
      open = undefined;
      continue;
    }
    if (open === undefined) {
      open = { fromMs: ms, toMs: ms };
      found.push(open);
    }
    open.toMs = ms;
  }
  return found.filter(({ fromMs, toMs }) => toMs - fromMs >= leastMs);
}
