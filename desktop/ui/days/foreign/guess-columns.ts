import { channelMeaning, channels } from '../../../../shared-types/channels.ts';
import type { TimeFormat } from '../../../../shared-types/foreign-log.ts';
import type { Role } from './draft.ts';

/** Signs for units, as headers of tables write them. */
const signs: Readonly<Record<string, string>> = {
  '°C': 'C',
  '°F': 'F',
  'W/m²': 'W/m2',
  'm³/h': 'm3/h',
  'l/min': 'L/min',
  'l/h': 'L/h',
};

/** What a column may be by its name, such as `Pan outlet [°C]`: the title of a channel or the channel itself. */
export function guessRole(name: string): { readonly role: Role; readonly unit: string } {
  const [, title = '', written = ''] = /^(.*?)\s*(?:[[(]([^\])]*)[\])])?$/.exec(name.trim()) ?? [];
  const unit = signs[written] ?? written;
  const word = title.toLowerCase();
  const channel = channels.find(
    (one) => one.toLowerCase() === word || channelMeaning[one].title.toLowerCase() === word,
  );
  if (channel !== undefined) return { role: channel, unit };
  if (word === 'pump') return { role: 'pump', unit };
  // A time's brackets hold its zone, no unit.
  if (/^(date ?time|time ?stamp|time|when)$/.test(word)) return { role: 'time', unit: '' };
  return { role: 'none', unit: '' };
}

const pairs = /^(\d{1,2})[./-](\d{1,2})[./-]\d{4}\b/;

/**
 * Format of times by some of them.
 *
 * @returns `eitherWay`: day and month could be the other way round.
 */
export function guessTimeFormat(cells: readonly string[]): {
  readonly format: TimeFormat;
  readonly eitherWay: boolean;
} {
  const first = cells.find((cell) => cell !== '') ?? '';
  if (/^\d{9,10}(\.\d+)?$/.test(first)) return { format: 'unix-s', eitherWay: false };
  if (/^\d{12,13}$/.test(first)) return { format: 'unix-ms', eitherWay: false };
  if (!pairs.test(first)) return { format: 'iso', eitherWay: false };
  const found = cells.map((cell) => pairs.exec(cell)).filter((match) => match !== null);
  const above12 = (place: 1 | 2) => found.some((match) => Number(match[place]) > 12);
  return { format: above12(2) ? 'month-day-year' : 'day-month-year', eitherWay: !above12(1) && !above12(2) };
}
