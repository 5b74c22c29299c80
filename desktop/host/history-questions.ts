import type { LogReader } from '../../controller/log/log.ts';
import type { AllowedHeat } from '../../shared-types/allowed-heat.ts';
import type { DayCurves, ReplayReport } from '../../shared-types/log.ts';
import type { MonitorReply } from '../../shared-types/monitor-api.ts';
import type { Site } from '../../shared-types/site.ts';
import type { LoopFit } from '../../shared-types/tuning.ts';
import type { WhatIf } from '../../sim/replay/what-if.ts';
import { checkedReply, thrownReply } from './checked-reply.ts';
import { thinCurves } from './downsample.ts';
import type { CheckedParams, HistoryMethod } from './history-messages.ts';
import type { JobFlags } from './job-flags.ts';
import { refusal } from './replies.ts';
import { answerWhatIf } from './what-if-question.ts';

/** What replays days and reckons with them; it is loaded only when a log is asked for. */
export interface Replays {
  readonly replayDay: (reader: LogReader, day: string) => ReplayReport;
  readonly whatIf: WhatIf;
  readonly allowedHeat: (curves: DayCurves, site: Site) => AllowedHeat;
  /** The fit kept beside the log of a site; null where there is none. */
  readonly keptFit: (site: string) => LoopFit | null;
}

type Answers = {
  readonly [M in HistoryMethod]: (
    reader: LogReader,
    params: CheckedParams<M>,
    replays: Replays,
    flags: JobFlags | undefined,
  ) => MonitorReply<M>;
};

const hourMs = 3_600_000;

const answers: Answers = {
  days: (reader) => ({ ok: true, result: reader.days() }),
  day(reader, { day, everyStep = false }) {
    const curves = reader.day(day);
    return { ok: true, result: everyStep ? curves : thinCurves(curves) };
  },
  recent(reader, { site, hours }) {
    const newestMs = reader.newestMs();
    if (newestMs === null) return refusal('note', `Nothing is recorded of ${site} yet.`);
    // The span ends before its second bound, and the newest record belongs to it.
    return { ok: true, result: thinCurves(reader.span(newestMs - hours * hourMs, newestMs + 1)) };
  },
  events: (reader, { limit, kinds }) => ({ ok: true, result: reader.events(limit, kinds) }),
  logFacts: (reader) => ({ ok: true, result: reader.facts() }),
  allowedHeat(reader, { site }, { allowedHeat }) {
    const newest = reader.newestDay();
    if (newest === null) return refusal('note', `Nothing is recorded of ${site} yet.`);
    return { ok: true, result: allowedHeat(reader.day(newest.day), newest.site) };
  },
  replay: (reader, { day }, { replayDay }) => ({ ok: true, result: replayDay(reader, day) }),
  whatIf: (reader, params, { whatIf }, flags) => answerWhatIf(reader, params, whatIf, flags),
  keptFit: (_reader, { site }, { keptFit }) => ({ ok: true, result: keptFit(site) }),
};

/** Answers one question from an open log. Never throws. */
export function answerQuestion<M extends HistoryMethod>(
  reader: LogReader,
  method: M,
  params: CheckedParams<M>,
  replays: Replays,
  flags?: JobFlags,
): MonitorReply<M> {
  try {
    return checkedReply(method, params.site, answers[method](reader, params, replays, flags));
  } catch (thrown) {
    return thrownReply(params.site, thrown);
  }
}
