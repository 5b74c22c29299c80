import type { PanBlock, PanFinding } from '../../shared-types/pan-check.ts';
import type { Estimate } from '../../shared-types/tuning.ts';
import type { Grouped } from './groups.ts';
import type { Reference } from './ratio.ts';
import { type Shade, shadeOf } from './shade.ts';
import { sureHalfWidths } from './student.ts';

interface Ground extends Grouped {
  readonly whole: Reference;
  /** Of `groups`, in their order. */
  readonly blocks: readonly PanBlock[];
  readonly before: PanBlock;
}

/** A change of heat that is smaller is not worth a word, however sure it is. A design choice. */
const leastChange = 0.03;
/** So of the sheet's contact: a share of what it was. A design choice. */
const leastContactShare = 0.2;

/** What the newest group of days tells against the reference, the gravest first. */
export function findingsOf(ground: Ground): PanFinding[] {
  const { groups, reference, whole, blocks, before } = ground;
  const newest = blocks.at(-1);
  const group = groups.at(-1);
  if (newest === undefined || group === undefined)
    return [{ code: 'nothing-to-compare', text: 'There are too few days beside those of the reference.' }];
  const { ratio } = newest;
  const least = Math.max(leastChange, sureHalfWidths * half(ratio));
  const less = ratio.value <= 1 - least;
  const more = ratio.value >= 1 + least;
  const causes: PanFinding[] = [];
  const shade = shadeOf(group, reference, whole);
  if (shade !== undefined) causes.push(shadeFinding(shade));
  const contact = changeOf(before.contactKM2W, newest.contactKM2W);
  if (contact !== null && Math.abs(contact) >= leastContactShare * Math.abs(before.contactKM2W?.value ?? 0))
    causes.push(contactFinding(newest, before, contact));
  // Efficiency and loss err against each other: a true change of one is one of heat as well. A shade bends both.
  const loss = shade === undefined ? changeOf(before.lossWM2K, newest.lossWM2K) : null;
  if (loss !== null && (loss > 0 ? less : more)) causes.push(lossFinding(newest, before, loss));
  if (less)
    return [
      lessFinding(
        ratio,
        causes.some(({ code }) => grave.has(code)),
      ),
      ...causes,
    ];
  if (more) return [...causes, moreFinding(ratio)];
  return causes.length > 0 ? causes : [asGood(ratio)];
}

/** What may be why a pan brings less. */
const grave: ReadonlySet<PanFinding['code']> = new Set(['shaded', 'contact-poorer', 'loses-more']);

function shadeFinding({ fromHour, toHour, lessFraction }: Shade): PanFinding {
  return {
    code: 'shaded',
    text:
      `From ${fromHour} to ${toHour} h solar time it brings ${percent(lessFraction)} less than at its other hours, ` +
      'as it did not on the reference days: look what stands in the way of the sun.',
  };
}

const percent = (fraction: number) => `${Math.round(100 * Math.abs(fraction))} %`;

/** By how much a number changed, where that is sure by both bands; else null. */
function changeOf(before: Estimate | null, now: Estimate | null): number | null {
  if (before === null || now === null) return null;
  const apart = sureHalfWidths * Math.hypot(half(before), half(now));
  const change = now.value - before.value;
  return Math.abs(change) > apart ? change : null;
}

const half = ({ low, high }: Estimate) => (high - low) / 2;

function lessFinding(ratio: Estimate, explained: boolean): PanFinding {
  const from = percent(1 - ratio.high);
  const to = percent(1 - ratio.low);
  const why = explained
    ? 'What is told below may be why.'
    : 'Loss, contact and the course of the day are as before, as far as the days tell: look for dirt, a faded sheet, too little flow, or a sun sensor that was cleaned or moved.';
  return {
    code: 'gathers-less',
    text: `It brings ${percent(1 - ratio.value)} less heat than on the reference days under the same weather (${from} to ${to}). ${why}`,
  };
}

function moreFinding(ratio: Estimate): PanFinding {
  return {
    code: 'gathers-more',
    text:
      `It brings ${percent(ratio.value - 1)} more heat than on the reference days under the same weather ` +
      `(${percent(ratio.low - 1)} to ${percent(ratio.high - 1)}): it was mended or cleaned, or a sensor changed, such as a sun sensor that got dirty.`,
  };
}

function lossFinding(newest: PanBlock, before: PanBlock, change: number): PanFinding {
  const numbers = `${figure(newest.lossWM2K, 1)} W/m2K without wind, ${figure(before.lossWM2K, 1)} W/m2K before`;
  return change > 0
    ? {
        code: 'loses-more',
        text: `It loses more: ${numbers}. Look for wet insulation, a sheet that lies open to the wind, or a thermometer that changed.`,
      }
    : { code: 'loses-less', text: `It loses less: ${numbers}.` };
}

function contactFinding(newest: PanBlock, before: PanBlock, change: number): PanFinding {
  const per = (contact: Estimate | null) => (1000 * (contact?.value ?? 0)).toFixed(1);
  const numbers = `${per(newest.contactKM2W)} K over the water for each 1000 W/m2 that it hands on, ${per(before.contactKM2W)} K before`;
  return change > 0
    ? {
        code: 'contact-poorer',
        text: `The sheet stands ${numbers}: look for air below it, or a sheet that no longer lies on the water.`,
      }
    : { code: 'contact-better', text: `The sheet stands ${numbers}.` };
}

const figure = (estimate: Estimate | null, digits: number) => (estimate?.value ?? 0).toFixed(digits);

function asGood({ value, low, high }: Estimate): PanFinding {
  const [is, from, to] = [value, low, high].map((one) => `${(100 * one).toFixed(0)}`);
  const heat = `it brings ${is} % of their heat under the same weather (${from} to ${to} %)`;
  if (Math.abs(value - 1) < leastChange)
    return { code: 'as-good', text: `As good as on the reference days: ${heat}.` };
  return {
    code: 'not-sure',
    text: `Nothing is sure: ${heat}. More days will tell, with more of steady flow.`,
  };
}
