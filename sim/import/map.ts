import { z } from 'zod';
import { channelSchema } from '../../shared-types/readings.ts';
import { sensorUnitNames } from '../../shared-types/sensor-units.ts';

/**
 * The room of foreign logs: reads the CSV of another logger by a map of its columns, and tells what it understood
 * and what not. It stands in `sim/` because it needs the parser of local times and the CSV library, which the
 * controller does without.
 */

const columnName = z.string().min(1).max(200).describe('name of the column in the header line');

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
    .array(z.strictObject({ column: columnName, channel: channelSchema, unit: z.enum(sensorUnitNames) }))
    .min(1),
});
export type ImportMap = z.infer<typeof importMapSchema>;
export type TimeFormat = ImportMap['time']['format'];
