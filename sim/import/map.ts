import { z } from 'zod';
import { channelSchema } from '../../shared-types/readings.ts';

/**
 * The room of foreign logs: reads the CSV of another logger by a map of its columns, tells what it understood
 * and what not, and keeps the values as a log of their own. It stands in `sim/` because it needs the parser of
 * local times and the CSV library, which the controller does without, and because replay may use what it reads.
 */

const columnName = z.string().min(1).max(200).describe('name of the column in the header line');

/** Units that another logger may write. */
export const foreignUnits = [
  'C',
  'F',
  'K',
  'L/min',
  'L/s',
  'L/h',
  'm3/h',
  'gal/min',
  'W/m2',
  'm/s',
  'km/h',
  'mph',
  'fraction',
  '%',
  'mm',
  'cm',
  'm',
  'in',
  'W',
  'kW',
] as const;

export const timeFormats = ['iso', 'day-month-year', 'month-day-year', 'unix-s', 'unix-ms'] as const;

export const importMapSchema = z.strictObject({
  delimiter: z
    .enum([',', ';', '\t', '|'])
    .optional()
    .describe('what stands between cells; guessed without it'),
  decimal: z.enum(['.', ',']).optional().describe('the decimal mark; guessed without it'),
  encoding: z.enum(['utf-8', 'utf-16le', 'windows-1252']).optional().describe('guessed without it'),
  time: z.strictObject({
    column: columnName,
    format: z.enum(timeFormats).default('iso'),
    zone: z.string().default('UTC').describe('IANA zone of times without an offset, and of the days'),
  }),
  values: z
    .array(z.strictObject({ column: columnName, channel: channelSchema, unit: z.enum(foreignUnits) }))
    .min(1),
});
export type ImportMap = z.infer<typeof importMapSchema>;
export type TimeFormat = ImportMap['time']['format'];
