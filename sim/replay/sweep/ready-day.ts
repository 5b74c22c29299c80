import type { LogReader } from '../../../controller/log/log.ts';
import type { Settings } from '../../../shared-types/settings.ts';
import type { Site } from '../../../shared-types/site.ts';
import { readSpan } from '../../identify/world/span.ts';
import { worldOf } from '../../identify/world/world.ts';
import type { Traits } from '../../plant/traits.ts';
import { liveDay } from '../live-again/live-day.ts';
import type { Lived } from '../live-again/lived.ts';
import { rulesOf } from '../rules.ts';
import { takeUp } from '../taking-up.ts';
import type { ReadyOrNot, Tried } from './trial.ts';

/** Reconstructs the world of a logged day once for each loop, so that any settings can be tried in it. */
export function makeReady(
  reader: LogReader,
  day: string,
  loops: readonly Partial<Traits>[],
  seed: number,
): ReadyOrNot {
  const read = readSpan(reader, day);
  if (!read.ok) return read;
  const { span } = read;
  const { state } = takeUp(reader, span.first, rulesOf(reader), undefined);
  const worlds = loops.map((traits) => worldOf(span, traits));
  const evaluate = (settings: Settings): Tried => {
    const lived = worlds.map((world) => liveDay({ span, world, state, settingsAt: () => settings, seed }));
    return triedOf(lived as [Lived, ...Lived[]], span.site);
  };
  return { ok: true, ready: { evaluate, remarks: worlds[0]?.remarks ?? [] } };
}

/** Heat from every loop; the rest from the best-known one. */
function triedOf(lived: readonly [Lived, ...Lived[]], { pan }: Site): Tried {
  const [{ electricityJ, starts, fills, extremes }] = lived;
  return {
    heatHomeJ: lived.map(({ heatHomeJ }) => heatHomeJ) as [number, ...number[]],
    electricityJ,
    starts,
    fills,
    aboveFreezingK: extremes.lowestPanC,
    belowLinerLimitK: extremes.highestSheetC === null ? null : pan.linerLimitC - extremes.highestSheetC,
  };
}
