import { safeOutputs } from '../../../controller/engine/index.ts';
import { localDaysOf } from '../../../controller/log/local-day.ts';
import type { LogReader } from '../../../controller/log/log.ts';
import { type Channel, channelMeaning } from '../../../shared-types/channels.ts';
import type { OperatorRequest, PhaseName } from '../../../shared-types/engine.ts';
import type { LogRecord } from '../../../shared-types/log.ts';
import type { Settings } from '../../../shared-types/settings.ts';
import type { Site } from '../../../shared-types/site.ts';
import { assumedPhase } from './assumed-phase.ts';
import { median } from './mending.ts';
import { createMinutes, type Minutes, type MinuteTaker, minuteMs } from './minutes.ts';
import { leastCoveredFraction, readFraction } from './read-fraction.ts';
import { sameLoop } from './same-loop.ts';

/** A logged day with what came before it, brought into order. */
export interface LoggedSpan {
  readonly day: string;
  readonly site: Site;
  /** What was in force, from each instant on; never empty. */
  readonly settings: readonly { readonly fromMs: number; readonly settings: Settings }[];
  /** The local day itself [UTC ms]; the minutes begin earlier, by as much as the log has of the warm-up. */
  readonly dayFromMs: number;
  readonly dayToMs: number;
  readonly minutes: Minutes;
  /** Phases that were in force, from each instant on. */
  readonly phases: readonly { readonly fromMs: number; readonly phase: PhaseName }[];
  /** What persons asked on the day. */
  readonly requests: readonly { readonly atMs: number; readonly request: OperatorRequest }[];
  /** First record of the day. */
  readonly first: LogRecord;
  /** Share of the day's minutes that the log covers, 0 to 1. */
  readonly coveredFraction: number;
  readonly remarks: readonly string[];
}

export type SpanRead =
  | { readonly ok: true; readonly span: LoggedSpan }
  | { readonly ok: false; readonly why: string };

const hourMs = 3_600_000;
/** So much before the day is taken along where the log has it: store and pan are then known; a design choice. */
const warmUpMs = 24 * hourMs;
/** Without a step for longer it is a gap that is told [ms]; of another logger's outputs nothing else is known. */
const gapMs = 120_000;
/** Calendar and steady clock may part by this between two steps [ms]; a design choice. */
const clockJumpMs = 30_000;
/** A reading older than this says nothing of its minute [ms]. */
const staleMs = 60_000;

/** Reads a local day, and the day before it. Refused with words where too little is there. */
export function readSpan(reader: LogReader, day: string): SpanRead {
  const records = reader.records(day);
  const { value: first } = records.next();
  if (first === undefined) return refused(`nothing of ${day} is kept`);
  const site = reader.site(first.siteRevision);
  if (site === null) return refused(`the site of ${day} is no longer in the log`);
  const { fromMs, toMs } = localDaysOf(site.timeZone).boundsOf(day);
  const taken = takeRecords(reader, { day, site, fromMs, toMs });
  if (taken.settings.length === 0) return refused(`the settings of ${day} are no longer in the log`);
  const { usualStepMs, ...spanned } = taken;
  const { minutes } = spanned;
  const coveredFraction = coverage(minutes, fromMs, toMs);
  if (coveredFraction < leastCoveredFraction)
    return refused(
      `the log covers ${percent(coveredFraction)} of ${day}, which is too little: ` +
        `${percent(leastCoveredFraction)} is the least${farApart(usualStepMs)}`,
    );
  const remarks = [
    ...spanned.remarks,
    ...partlyRead(minutes, fromMs),
    ...reader.remarks.map((text) => `The log: ${text}.`),
  ];
  return {
    ok: true,
    span: { ...spanned, day, site, dayFromMs: fromMs, dayToMs: toMs, first, coveredFraction, remarks },
  };
}

/** A minute without a step is not covered. */
function farApart(usualStepMs: number): string {
  if (!(usualStepMs > minuteMs)) return '';
  return `; its steps lie ${(usualStepMs / minuteMs).toFixed(1)} minutes apart, and one is needed in each minute`;
}

/** A sensor that was read in less of the day is worth a word; a design choice. */
const nearlyAllFraction = 0.9;

function partlyRead(minutes: Minutes, dayFromMs: number): string[] {
  return (Object.keys(minutes.values) as Channel[]).flatMap((channel) => {
    const fraction = readFraction(minutes.values[channel], { minutes, dayFromMs });
    if (fraction >= nearlyAllFraction) return [];
    return [`${channelMeaning[channel].title}: read in ${percent(fraction)} of what was logged of the day.`];
  });
}

const refused = (why: string): SpanRead => ({ ok: false, why });
const percent = (fraction: number) => `${(100 * fraction).toFixed(0)} %`;

function coverage({ fromMs, steps }: Minutes, dayFromMs: number, dayToMs: number): number {
  const from = (dayFromMs - fromMs) / minuteMs;
  const to = (dayToMs - fromMs) / minuteMs;
  return steps.subarray(from, to).reduce((count, here) => count + Number(here > 0), 0) / (to - from);
}

interface Wanted {
  readonly day: string;
  readonly site: Site;
  readonly fromMs: number;
  readonly toMs: number;
}

interface Taken extends Pick<LoggedSpan, 'settings' | 'minutes' | 'phases' | 'requests' | 'remarks'> {
  /** The middle one of the distances of its steps [ms]; not a number of fewer than two. */
  readonly usualStepMs: number;
}

function takeRecords(reader: LogReader, wanted: Wanted): Taken {
  const { day, fromMs, toMs } = wanted;
  const dayBefore = reader.days().findLast((kept) => kept.day < day && kept.lastMs >= fromMs - gapMs);
  const beginMs =
    dayBefore === undefined ? fromMs : Math.max(fromMs - warmUpMs, minuteAfter(dayBefore.firstMs));
  const minutes = createMinutes(beginMs, Math.ceil((toMs - beginMs) / minuteMs));
  const taker = createTaker(reader, wanted, minutes);
  if (dayBefore !== undefined) for (const record of reader.records(dayBefore.day)) taker.take(record);
  for (const record of reader.records(day)) taker.take(record);
  return taker.taken();
}

const minuteAfter = (atMs: number) => Math.ceil(atMs / minuteMs) * minuteMs;

/** Puts records in order; what cannot be put in order is left out and counted. */
function createTaker(reader: LogReader, { fromMs, toMs, site }: Wanted, minutes: MinuteTaker) {
  const settings: { fromMs: number; settings: Settings }[] = [];
  const phases: { fromMs: number; phase: PhaseName }[] = [];
  const requests: { atMs: number; request: OperatorRequest }[] = [];
  const counts = { notLater: 0, jumps: 0, gaps: 0, gapMs: 0, otherSite: 0, foreign: 0 };
  const ends = { beforeMs: 0, afterMs: 0 };
  const stepsMs: number[] = [];
  const expiryMs = 1000 * site.control.outputExpiryS;
  let last: LogRecord | undefined;
  let settingsRevision = Number.NaN;
  let siteRevision = Number.NaN;
  let ofSite = true;

  function knows(record: LogRecord): boolean {
    if (record.siteRevision !== siteRevision) {
      siteRevision = record.siteRevision;
      const own = reader.site(siteRevision);
      ofSite = own !== null && (own === site || sameLoop(own, site));
    }
    if (!ofSite) counts.otherSite++;
    return ofSite;
  }

  function note(record: LogRecord): void {
    const { input, settingsRevision: revision } = record;
    const { nowMs, request } = input;
    if (revision !== settingsRevision) {
      settingsRevision = revision;
      const found = reader.settings(revision);
      if (found !== null) settings.push({ fromMs: nowMs, settings: found });
    }
    const phase = assumedPhase(record, site);
    if (phase !== phases.at(-1)?.phase) phases.push({ fromMs: nowMs, phase });
    if (isForeign(record)) counts.foreign++;
    if (request !== null && nowMs > fromMs && nowMs <= toMs) requests.push({ atMs: nowMs, request });
  }

  function takeDrive(before: LogRecord, record: LogRecord): void {
    const { nowMs, elapsedMs, feedback } = record.input;
    const lastMs = before.input.nowMs;
    const tookMs = nowMs - lastMs;
    stepsMs.push(tookMs);
    const isGap = tookMs > gapMs;
    if (isGap) {
      counts.gaps++;
      counts.gapMs += tookMs;
    }
    if (isGap || (!isForeign(before) && (elapsedMs ?? tookMs) > expiryMs)) {
      letGo(before, nowMs);
      return;
    }
    if (elapsedMs !== null && Math.abs(tookMs - elapsedMs) > clockJumpMs) counts.jumps++;
    const { outputs } = before.outcome;
    const told = feedback !== null && feedback.ageMs < staleMs;
    minutes.drive(lastMs, nowMs, told ? { ...outputs, ...movedBy(feedback, outputs) } : outputs);
  }

  /** Until they expire the device holds its outputs; then they fall safe. */
  function letGo(record: LogRecord, untilMs: number): void {
    const { nowMs } = record.input;
    const heldMs = isForeign(record) ? nowMs : Math.min(untilMs, nowMs + expiryMs);
    minutes.drive(nowMs, heldMs, record.outcome.outputs);
    minutes.drive(heldMs, untilMs, safeOutputs);
  }

  return {
    take(record: LogRecord): void {
      const { nowMs, readings } = record.input;
      if (!knows(record)) return;
      if (last !== undefined && nowMs <= last.input.nowMs) {
        counts.notLater++;
        return;
      }
      note(record);
      if (last === undefined) ends.beforeMs = nowMs - fromMs;
      else takeDrive(last, record);
      minutes.step(nowMs);
      const { failed } = record.outcome;
      for (const channel of Object.keys(readings) as Channel[]) {
        const reading = readings[channel];
        if (reading === undefined || reading.value === null || reading.ageMs > staleMs) continue;
        if (!failed.includes(channel)) minutes.read(nowMs, channel, reading.value);
      }
      last = record;
    },
    taken(): Taken {
      if (last !== undefined) {
        letGo(last, toMs);
        ends.afterMs = toMs - last.input.nowMs;
      }
      return {
        settings,
        minutes: minutes.minutes(),
        phases,
        requests,
        remarks: [...inWords(counts), ...endsInWords(ends)],
        usualStepMs: median(stepsMs),
      };
    },
  };
}

/** Written by another logger, which knew no phase. */
const isForeign = ({ outcome }: LogRecord) => outcome.phase === 'unknown';

function movedBy(
  { pumpFraction, drainOpen }: NonNullable<LogRecord['input']['feedback']>,
  outputs: LogRecord['outcome']['outputs'],
) {
  return { pumpFraction, drainOpen: drainOpen ?? outputs.drainOpen };
}

function inWords(
  counts: Readonly<Record<'notLater' | 'jumps' | 'gaps' | 'gapMs' | 'otherSite' | 'foreign', number>>,
): string[] {
  const remarks: string[] = [];
  if (counts.notLater > 0)
    remarks.push(`${counts.notLater} steps that were not later than the one before them are left out.`);
  if (counts.jumps > 0)
    remarks.push(`The calendar clock jumped ${counts.jumps} times; what lies between is taken as it stands.`);
  if (counts.gaps > 0)
    remarks.push(
      `${counts.gaps} gaps, ${(counts.gapMs / 60_000).toFixed(0)} minutes in sum: pump off and drain open are assumed in them${counts.foreign > 0 ? '' : ', from when the device lets go of its outputs'}.`,
    );
  if (counts.otherSite > 0)
    remarks.push(`${counts.otherSite} steps are left out: the loop was another one by its site file.`);
  if (counts.foreign > 0)
    remarks.push(
      'Another logger wrote the day: whether water lay in the pan is assumed by its pump and level.',
    );
  return remarks;
}

function endsInWords({
  beforeMs,
  afterMs,
}: {
  readonly beforeMs: number;
  readonly afterMs: number;
}): string[] {
  const remarks: string[] = [];
  if (beforeMs > gapMs)
    remarks.push(
      `The log begins ${inMinutes(beforeMs)} into the day: until then the loop is taken to stand as it then stood.`,
    );
  if (afterMs > gapMs)
    remarks.push(
      `The log ends ${inMinutes(afterMs)} before the day does: from there on pump off and drain open are assumed, and a sky as clear as it was last.`,
    );
  return remarks;
}

const inMinutes = (ms: number) => `${(ms / minuteMs).toFixed(0)} minutes`;
