import { type Channel, channelMeaning, channels } from '../../../../shared-types/channels.ts';
import type { FileForm, FileHead, ImportMap, TimeFormat } from '../../../../shared-types/foreign-log.ts';
import { type SensorUnit, sensorUnitNames, sensorUnits } from '../../../../shared-types/sensor-units.ts';
import { en } from '../../text/en.ts';
import { guessRole, guessTimeFormat } from './guess-columns.ts';

/** What a column can be said to be. */
export type Role = 'none' | 'time' | 'pump' | 'drain' | Channel;

export interface ColumnDraft {
  readonly name: string;
  readonly role: Role;
  /** A unit of sensors for a channel, one of the pump for the pump; empty for the rest. */
  readonly unit: string;
}

/** What was said of a file so far. */
export interface Draft {
  readonly columns: readonly ColumnDraft[];
  readonly format: TimeFormat;
  readonly zone: string;
}

export const isChannel = (role: Role): role is Channel => (channels as readonly string[]).includes(role);

/** Units that a column of that role may be written in; the first is the likeliest. */
export function unitsOf(role: Role): readonly string[] {
  if (role === 'pump') return Object.keys(en.foreign.pumpUnits);
  if (!isChannel(role)) return [];
  const { unit } = channelMeaning[role];
  return sensorUnitNames.filter((name) => sensorUnits[name].into === unit);
}

/** A draft by the names of the columns and their first cells. @param zone - Zone of the site. */
export function guessedDraft({ header, rows }: FileHead, zone: string): Draft {
  const taken = new Set<Role>();
  const columns = header.map((name): ColumnDraft => {
    const { role, unit } = guessRole(name);
    if (role === 'none' || taken.has(role)) return { name, role: 'none', unit: '' };
    taken.add(role);
    return { name, role, unit: unitsOf(role).find((one) => one === unit) ?? unitsOf(role)[0] ?? '' };
  });
  const time = columns.findIndex(({ role }) => role === 'time');
  const cells = time < 0 ? [] : rows.map((row) => row[time] ?? '');
  return { columns, zone, format: guessTimeFormat(cells).format };
}

/** A draft by a map that was kept; columns that the map does not know are left out. */
export function draftOfMap({ header }: FileHead, { time, values, pump, drain }: ImportMap): Draft {
  const columns = header.map((name): ColumnDraft => {
    const value = values.find(({ column }) => column === name);
    if (value !== undefined) return { name, role: value.channel, unit: value.unit };
    if (time.column === name) return { name, role: 'time', unit: '' };
    if (pump?.column === name) return { name, role: 'pump', unit: pump.unit };
    return { name, role: drain?.column === name ? 'drain' : 'none', unit: '' };
  });
  return { columns, format: time.format, zone: time.zone };
}

/** The draft with another role for a column, in the likeliest unit of that role. */
export function withRole(draft: Draft, place: number, role: Role): Draft {
  return withColumn(draft, place, { role, unit: unitsOf(role)[0] ?? '' });
}

export function withColumn(draft: Draft, place: number, change: Partial<ColumnDraft>): Draft {
  return {
    ...draft,
    columns: draft.columns.map((column, index) => (index === place ? { ...column, ...change } : column)),
  };
}

const pumpTellers: readonly Role[] = ['pump', 'flowLMin', 'pumpPowerW'];

/** What is still to be said before anything can be understood, in words. */
export function faultsOf({ columns }: Draft): readonly string[] {
  const { faults } = en.foreign;
  const roles = columns.map(({ role }) => role).filter((role) => role !== 'none');
  const found: string[] = [];
  if (!roles.includes('time')) found.push(faults.noTime);
  if (!roles.some(isChannel)) found.push(faults.noValue);
  if (!roles.some((role) => pumpTellers.includes(role))) found.push(faults.noPump);
  for (const role of new Set(roles.filter((role, index) => roles.indexOf(role) !== index)))
    found.push(role === 'time' ? faults.twoTimes : faults.twice(roleTitle(role)));
  return found;
}

export function roleTitle(role: Role): string {
  return isChannel(role) ? channelMeaning[role].title : en.foreign.roles[role];
}

/** The map that a draft without faults says. */
export function mapOf({ columns, format, zone }: Draft, form: FileForm): ImportMap {
  const named = (wanted: Role) => columns.find(({ role }) => role === wanted);
  const [pump, drain] = [named('pump'), named('drain')];
  return {
    ...form,
    time: { column: named('time')?.name ?? '', format, zone },
    values: columns.flatMap(({ name, role, unit }) =>
      isChannel(role) ? [{ column: name, channel: role, unit: unit as SensorUnit }] : [],
    ),
    ...(pump === undefined
      ? {}
      : { pump: { column: pump.name, unit: pump.unit as NonNullable<ImportMap['pump']>['unit'] } }),
    ...(drain === undefined ? {} : { drain: { column: drain.name } }),
  };
}
