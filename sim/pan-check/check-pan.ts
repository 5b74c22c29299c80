import type { LogReader } from '../../controller/log/log.ts';
import type { PanBlock, PanCheck, PanDay } from '../../shared-types/pan-check.ts';
import type { Estimate, LoopFit } from '../../shared-types/tuning.ts';
import { loopOfFit } from '../identify/loop-file.ts';
import { sameLoop } from '../identify/world/same-loop.ts';
import { type LoggedSpan, readSpan } from '../identify/world/span.ts';
import { usualTraits } from '../plant/traits.ts';
import { contactOf } from './contact.ts';
import { findingsOf } from './findings.ts';
import { groupedDays, leastGroupDays, type UsableDay } from './groups.ts';
import { freedomOf, type PanLine, panLineOf } from './pan-line.ts';
import { plus, type Reference, ratioOf, type Sums, scatterOf, sumsOf } from './ratio.ts';
import { type HeldCoefficients, stretchesOf, stretchMin } from './stretches.ts';
import { bandAbout } from './student.ts';

export interface PanCheckOptions {
  /** Kept days that are looked at. */
  readonly days: readonly string[];
  /** Days that the others are compared with; none: the oldest of `days`. */
  readonly referenceDays: readonly string[];
  /** Where what wind does is known from; null: usual values. */
  readonly fit: LoopFit | null;
  /** Told how far it is, 0 to 1; false gives up. */
  readonly goOn?: (doneFraction: number) => boolean;
}

export type PanChecked =
  | { readonly ok: true; readonly check: PanCheck }
  | { readonly ok: false; readonly why: readonly string[] };

/** Stretches that make a day one of use: an hour and a half. A design choice. */
const leastStretches = 3;

/**
 * Looks whether a pan gathers and loses as it did: heat that it gave in steady flow against what the pan of the reference
 * days would have given under the same sun, air and wind.
 *
 * The comparison by measured against estimated power is the one of ISO 24194 in its idea, from memory; that standard's
 * limits for operating conditions and safety factors are not applied, since a pan is compared with itself.
 *
 * @returns undefined when it was given up.
 */
export function checkPan(reader: LogReader, options: PanCheckOptions): PanChecked | undefined {
  const { fit, referenceDays } = options;
  const traits = { ...usualTraits, ...(fit === null ? {} : loopOfFit(fit).traits) };
  const read = readDays(reader, options, traits);
  if (read === undefined) return undefined;
  const { days, site, remarks, leftOut } = read;
  const lineOf = (reference: readonly UsableDay[]) =>
    panLineOf(
      reference.flatMap(({ stretches }) => stretches),
      traits,
      traits.stillLossWM2K,
    );
  const first = lineOf(groupedDays(days, referenceDays).reference);
  // What is worth looking at is known once there is a pan to compare with, and may change which are the oldest.
  const worth = first === undefined ? days : days.filter((day) => isWorth(sumsOf(day, first, traits), day));
  const { reference, groups } = groupedDays(worth, referenceDays);
  const line = lineOf(reference);
  if (site === undefined || line === undefined) return { ok: false, why: tooFew(worth.length, leftOut) };
  const summed = [reference, ...groups].map((group) => group.map((day) => sumsOf(day, line, traits)));
  const whole: Reference = { line, held: traits, scatterWM2: scatterOf(summed) };
  const before: PanBlock = { ...blockOf(reference, whole), ratio: one };
  const blocks = groups.map((group) => blockOf(group, whole));
  return {
    ok: true,
    check: {
      site: site.name,
      reference: before,
      blocks,
      days: worth
        .filter((day) => isCounted(day, [reference, ...groups]))
        .map((day) => panDayOf(day, sumsOf(day, line, traits), whole, site.pan.grossAreaM2)),
      findings: findingsOf({ reference, groups, whole, blocks, before }),
      remarks: [...remarks, ...lineRemarks(line, fit), ...leftOut, ...laterDays(worth, options.days)],
    },
  };
}

/** With less to expect a ratio is mostly noise [W/m2]. A design choice. */
const leastExpectedWM2 = 100;

const isWorth = ({ expected }: Sums, { stretches }: UsableDay) =>
  expected >= leastExpectedWM2 * stretches.length;

const one: Estimate = { value: 1, low: 1, high: 1 };

function isCounted(day: UsableDay, groups: readonly (readonly UsableDay[])[]): boolean {
  return groups.some((group) => group.includes(day));
}

const inDays = (count: number) => (count === 1 ? '1 day' : `${count} days`);

/** Where the newest days are of no use, what is found is not of now. */
function laterDays(worth: readonly UsableDay[], asked: readonly string[]): string[] {
  const newest = (worth.at(-1) as UsableDay).day;
  const later = asked.filter((day) => day > newest).length;
  return later === 0
    ? []
    : [`The newest day of use is ${newest}: what is found is not of ${inDays(later)} after it.`];
}

interface DaysRead {
  readonly days: readonly UsableDay[];
  readonly site: LoggedSpan['site'] | undefined;
  readonly remarks: readonly string[];
  readonly leftOut: readonly string[];
}

function readDays(
  reader: LogReader,
  { days: asked, referenceDays, goOn = () => true }: PanCheckOptions,
  held: HeldCoefficients,
): DaysRead | undefined {
  const wanted = [...new Set([...referenceDays, ...asked])].sort();
  const days: UsableDay[] = [];
  const remarks = new Set<string>();
  const unread: string[] = [];
  const refused = new Map<string, string[]>();
  let site: LoggedSpan['site'] | undefined;
  const refuse = (why: string, day: string) => refused.set(why, [...(refused.get(why) ?? []), day]);
  for (const [index, day] of wanted.entries()) {
    if (!goOn(index / wanted.length)) return undefined;
    const read = readSpan(reader, day);
    if (!read.ok) {
      unread.push(`Left out: ${read.why}.`);
      continue;
    }
    const told =
      site === undefined || sameLoop(site, read.span.site) ? stretchesOf(read.span, held) : otherLoop;
    if (!told.ok) {
      refuse(told.why, day);
      continue;
    }
    site ??= read.span.site;
    for (const remark of told.remarks) remarks.add(remark);
    if (told.stretches.length >= leastStretches) days.push({ day, stretches: told.stretches });
    else refuse('of less than an hour and a half of steady flow through a full pan', day);
  }
  if (!goOn(1)) return undefined;
  const leftOut = [...refused].map(([why, own]) => `Left out because ${why}: ${namedDays(own)}.`);
  return { days, site, remarks: [...remarks], leftOut: [...leftOut, ...unread] };
}

const otherLoop = { ok: false, why: 'the loop was another one by its site file' } as const;

/** Days that are named one by one; more are counted. */
const mostNamed = 3;

function namedDays(days: readonly string[]): string {
  const named = days.slice(0, mostNamed).join(', ');
  return days.length <= mostNamed ? named : `${named} and ${inDays(days.length - mostNamed)} more`;
}

function tooFew(days: number, leftOut: readonly string[]): string[] {
  const needed = `${2 * leastGroupDays} days with steady flow through a full pan are needed, and at least ${leastGroupDays} to compare with`;
  return [`${needed}; ${days} are there`, ...leftOut];
}

function lineRemarks({ lossTold }: PanLine, fit: LoopFit | null): string[] {
  const remarks = [
    'Efficiency and loss are told by these sensors: what they show wrong on all days alike moves all values alike, and no ratio.',
    fit === null
      ? 'What the wind takes is taken from usual values, for the loop was not fitted.'
      : 'What the wind takes is taken from the fit of the loop.',
  ];
  if (!lossTold)
    remarks.push(
      'The reference days do not tell the loss apart from the efficiency: it is taken from there as well.',
    );
  return remarks;
}

function blockOf(days: readonly UsableDay[], whole: Reference): PanBlock {
  const { line: before, held } = whole;
  const line = panLineOf(
    days.flatMap(({ stretches }) => stretches),
    held,
    before.lossWM2K,
  ) as PanLine;
  const sums = days.map((day) => sumsOf(day, before, held)).reduce(plus);
  return {
    fromDay: (days[0] as UsableDay).day,
    toDay: (days.at(-1) as UsableDay).day,
    days: days.length,
    hours: days.reduce((hours, day) => hours + hoursOf(day), 0),
    ratio: ratioOf(sums, whole),
    efficiency: estimateOf(line, 0),
    lossWM2K: line.lossTold ? estimateOf(line, 1) : null,
    contactKM2W: contactOf(days),
  };
}

function estimateOf(line: PanLine, index: 0 | 1): Estimate {
  const value = index === 0 ? line.efficiency : line.lossWM2K;
  return bandAbout(value, Math.sqrt(line.covariance[index]?.[index] as number), freedomOf(line));
}

const hoursOf = ({ stretches }: UsableDay) => (stretches.length * stretchMin) / 60;

function panDayOf(day: UsableDay, sums: Sums, whole: Reference, areaM2: number): PanDay {
  const joules = (sumWM2: number) => sumWM2 * areaM2 * stretchMin * 60;
  return {
    day: day.day,
    hours: hoursOf(day),
    measuredJ: joules(sums.gave),
    expectedJ: joules(sums.expected),
    ratio: ratioOf(sums, whole),
  };
}
