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
import { type PanLine, panLineOf } from './pan-line.ts';
import { plus, type Reference, ratioOf, type Sums, scatterOf, sumsOf } from './ratio.ts';
import { type HeldCoefficients, stretchesOf, stretchMin } from './stretches.ts';
import { studentHalfWidth } from './student.ts';

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
 * The comparison by measured against estimated power is the one of ISO 24194 in its idea; that standard's limits for
 * operating conditions and safety factors are not applied, since a pan is compared with itself.
 *
 * @returns undefined when it was given up.
 */
export function checkPan(reader: LogReader, options: PanCheckOptions): PanChecked | undefined {
  const { fit, referenceDays } = options;
  const held: HeldCoefficients = { ...usualTraits, ...(fit === null ? {} : loopOfFit(fit).traits) };
  const read = readDays(reader, options, held);
  if (read === undefined) return undefined;
  const { days, site, remarks, leftOut } = read;
  const stretches = groupedDays(days, referenceDays).reference.flatMap((day) => day.stretches);
  const line = panLineOf(stretches, held, usualTraits.stillLossWM2K);
  if (site === undefined || line === undefined) return { ok: false, why: tooFew(days.length, leftOut) };
  const worth = days.filter((day) => isWorth(sumsOf(day, line, held), day));
  const { reference, groups } = groupedDays(worth, referenceDays);
  if (reference.length < leastGroupDays) return { ok: false, why: tooFew(worth.length, leftOut) };
  const summed = [reference, ...groups].map((group) => group.map((day) => sumsOf(day, line, held)));
  const whole: Reference = { line, held, scatterWM2: scatterOf(summed) };
  const areaM2 = site.pan.grossAreaM2;
  const blocks = groups.map((group) => blockOf(group, whole));
  return {
    ok: true,
    check: {
      site: site.name,
      reference: { ...blockOf(reference, whole), ratio: one },
      blocks,
      days: worth
        .filter((day) => isCounted(day, [reference, ...groups]))
        .map((day) => panDayOf(day, sumsOf(day, line, held), whole, areaM2)),
      findings: findingsOf({ reference, groups, whole, blocks, before: blockOf(reference, whole) }),
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
  const leftOut: string[] = [];
  let restful = 0;
  let site: LoggedSpan['site'] | undefined;
  for (const [index, day] of wanted.entries()) {
    if (!goOn(index / wanted.length)) return undefined;
    const read = readSpan(reader, day);
    if (!read.ok) {
      leftOut.push(`Left out: ${read.why}.`);
      continue;
    }
    if (site !== undefined && !sameLoop(site, read.span.site)) {
      leftOut.push(`Left out: on ${day} the loop was another one by its site file.`);
      continue;
    }
    const told = stretchesOf(read.span, held);
    if (!told.ok) {
      leftOut.push(`Left out: ${told.why}.`);
      continue;
    }
    site ??= read.span.site;
    for (const remark of told.remarks) remarks.add(remark);
    if (told.stretches.length >= leastStretches) days.push({ day, stretches: told.stretches });
    else restful++;
  }
  if (restful > 0)
    leftOut.push(
      `Left out: ${inDays(restful)} with less than an hour and a half of steady flow through a full pan.`,
    );
  return { days, site, remarks: [...remarks], leftOut };
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
    remarks.push('The reference days do not tell the loss apart from the efficiency: a usual loss is taken.');
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

function estimateOf({ efficiency, lossWM2K, covariance, days }: PanLine, index: 0 | 1): Estimate {
  const value = index === 0 ? efficiency : lossWM2K;
  const half = studentHalfWidth(Math.max(2, days - 1)) * Math.sqrt(covariance[index]?.[index] as number);
  return { value, low: value - half, high: value + half };
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
