import { assertNever } from '../assert-never.ts';
import { inLine, type NumberFormats } from '../format/numbers.ts';
import { durationText } from '../format/times.ts';
import { en } from '../text/en.ts';
import type { LearntUnit } from '../text/learnt.ts';

const order = Object.keys(en.learnt);
/** Place in the table; what is not known there comes last. */
function placeOf(name: string): number {
  const place = order.indexOf(name);
  return place < 0 ? order.length : place;
}

/** What was learnt, in words and units, in the order of the table. A name of another version stands as it is, its number without a unit. */
export function learntRows(
  learnt: Readonly<Record<string, number>>,
  numbers: NumberFormats,
): readonly (readonly [title: string, value: string])[] {
  const entries = Object.entries(learnt).sort(([a], [b]) => placeOf(a) - placeOf(b));
  return entries.map(([name, value]) => {
    const known = Object.hasOwn(en.learnt, name) ? en.learnt[name] : undefined;
    return known === undefined
      ? [name, inLine(numbers.measure(value, 3, ''))]
      : [known.title, learntText(known.unit, value, numbers)];
  });
}

function learntText(unit: LearntUnit, value: number, numbers: NumberFormats): string {
  switch (unit) {
    case 'LMin':
    case 'W':
    case 'Mm':
      return inLine(numbers.channel(unit, value));
    case 'K':
      return inLine(numbers.difference(value));
    case 'S':
      return durationText(value * 1000);
    case 'KM2W':
      return inLine(numbers.measure(value, 4, 'K m²/W'));
    default:
      return assertNever(unit);
  }
}
