import type { LogReader } from '../../../controller/log/log.ts';
import type { Settings } from '../../../shared-types/settings.ts';
import type { PossibleLoop } from '../../identify/possible-loop.ts';
import { type LoggedSpan, readSpan } from '../../identify/world/span.ts';
import { type LoggedWorld, worldOf } from '../../identify/world/world.ts';
import { leftGroundOf } from '../live-again/left-ground.ts';
import { liveDay } from '../live-again/live-day.ts';
import type { Lived } from '../live-again/lived.ts';
import { underTheirSkies } from '../live-again/possible-loops.ts';
import { rulesOf } from '../rules.ts';
import { type TakenUp, takeUp } from '../taking-up.ts';
import { timeS } from './stretches.ts';
import type { ReadyOrNot, Tried } from './trial.ts';

/** Reconstructs the world of a logged day once for each loop, so that any settings can be tried in it. */
export function makeReady(
  reader: LogReader,
  day: string,
  loops: readonly PossibleLoop[],
  seed: number,
): ReadyOrNot {
  const read = readSpan(reader, day);
  if (!read.ok) return read;
  const { span } = read;
  const { state, from } = takeUp(reader, span.first, rulesOf(reader), undefined);
  const worlds = worldsOf(span, underTheirSkies(span, loops, seed));
  const evaluate = (settings: Settings): Tried => {
    const lived = worlds.map((world) => liveDay({ span, world, state, settingsAt: () => settings, seed }));
    return triedOf(lived as [Lived, ...Lived[]], span);
  };
  return { ok: true, ready: { evaluate, remarks: [...(worlds[0]?.remarks ?? []), ...remarksOn(from)] } };
}

/** What was found for the first loop is where the search for the others begins. */
function worldsOf(span: LoggedSpan, loops: readonly PossibleLoop[]): LoggedWorld[] {
  const worlds: LoggedWorld[] = [];
  for (const loop of loops) worlds.push(worldOf(span, loop, worlds[0]?.panOffsetK));
  return worlds;
}

function remarksOn(from: TakenUp['from']): string[] {
  return from === 'saved'
    ? []
    : ['No usable state of the engine was kept from before the day; it begins anew.'];
}

/** Heat from every loop; the rest from the best-known one. */
function triedOf(lived: readonly [Lived, ...Lived[]], span: LoggedSpan): Tried {
  const [{ electricityJ, starts, fills, extremes, curves }] = lived;
  const { linerLimitC } = span.site.pan;
  return {
    heatHomeJ: lived.map(({ heatHomeJ }) => heatHomeJ) as [number, ...number[]],
    electricityJ,
    starts,
    fills,
    aboveFreezingK: extremes.lowestPanC,
    mostIceKg: extremes.mostIceKg,
    belowLinerLimitK: extremes.highestSheetC === null ? null : linerLimitC - extremes.highestSheetC,
    beyondLogS: timeS(leftGroundOf(span, curves)),
  };
}
