import { z } from 'zod';
import { jobSchema } from './jobs.ts';
import { channelSchema } from './readings.ts';
import { sensorUnitNames } from './sensor-units.ts';

/** The vocabulary of foreign logs: how the columns of another logger's CSV are understood, and what came of it. */

const columnName = z.string().min(1).max(200).describe('name of the column in the header line');

export const timeFormats = ['iso', 'day-month-year', 'month-day-year', 'unix-s', 'unix-ms'] as const;
export const delimiters = ['\t', ';', '|', ','] as const;
export const decimalMarks = ['.', ','] as const;
export const encodings = ['utf-8', 'utf-16le', 'windows-1252'] as const;
/** Which value stands where the log holds another one for the same instant. */
export const clashes = ['keep', 'replace'] as const;
export type Clash = (typeof clashes)[number];

/** How a logger writes what the pump does. */
export const pumpUnits = ['on-off', 'fraction', '%'] as const;

/** How a file is written. */
const fileFormSchema = z.strictObject({
  delimiter: z.enum(delimiters).optional().describe('what stands between cells; guessed without it'),
  decimal: z.enum(decimalMarks).optional().describe('the decimal mark; guessed without it'),
  encoding: z.enum(encodings).optional().describe('guessed without it'),
  headerLine: z.int().min(1).max(100).default(1).describe('line that names the columns'),
});
export type FileForm = z.infer<typeof fileFormSchema>;

export const importMapSchema = fileFormSchema.extend({
  time: z.strictObject({
    column: columnName,
    format: z.enum(timeFormats).default('iso'),
    zone: z.string().max(100).default('UTC').describe('IANA zone of times without an offset'),
  }),
  values: z
    .array(z.strictObject({ column: columnName, channel: channelSchema, unit: z.enum(sensorUnitNames) }))
    .min(1),
  pump: z
    .strictObject({ column: columnName, unit: z.enum(pumpUnits) })
    .optional()
    .describe('what the pump did; without it its flow or its power tells whether it ran'),
  drain: z
    .strictObject({ column: columnName })
    .optional()
    .describe('whether the drain stood open; taken from rows that tell of the pump as well'),
});
export type ImportMap = z.infer<typeof importMapSchema>;
export type TimeFormat = ImportMap['time']['format'];

/** Name under which a map of columns is kept. */
export const mapNameSchema = z
  .string()
  .trim()
  .min(1)
  .max(60)
  .regex(/^[^\p{Cc}]*$/u, 'no control characters');

/** The file of kept maps. */
export const keptMapsSchema = z.strictObject({
  schema: z.literal(1),
  maps: z.array(z.strictObject({ name: mapNameSchema, map: importMapSchema })).max(50),
});
export type KeptMaps = z.infer<typeof keptMapsSchema>;

/** Why a cell or a row was not taken, or not as it stood there. */
export const missCauses = [
  'not-a-time',
  'skipped-by-clock',
  'far-away',
  'not-a-number',
  'not-a-state',
  'out-of-range',
  'out-of-order',
  'duplicated',
  'contested',
  'clock-set-back',
  'two-instants',
  'no-pump',
  'no-value',
  'not-csv',
] as const;
export type MissCause = (typeof missCauses)[number];
const missCauseSchema = z.enum(missCauses);

/** A place in the file that was not understood, or not taken as it stood there. */
export const missSchema = z.strictObject({
  line: z.int(),
  column: z.string(),
  text: z.string(),
  cause: missCauseSchema,
});
export type Miss = z.infer<typeof missSchema>;

/** A row as it was understood, in inner units. */
export const understoodRowSchema = z.strictObject({
  atMs: z.number(),
  values: z.partialRecord(channelSchema, z.number()),
  pumpFraction: z.number().nullable(),
  drainOpen: z.boolean().nullable(),
});
export type UnderstoodRow = z.infer<typeof understoodRowSchema>;

/** What was understood of a file, and what of it is new. */
export const importReportSchema = z.strictObject({
  encoding: z.enum(encodings),
  delimiter: z.enum(delimiters),
  decimal: z.enum(decimalMarks),
  rows: z.int(),
  /** Rows that became a step, or part of one. */
  rowsTaken: z.int(),
  firstMs: z.number().nullable(),
  lastMs: z.number().nullable(),
  /** The commonest distance of neighbouring rows [ms]; null with fewer than two. */
  usualStepMs: z.number().nullable(),
  /** Distances of more than four usual steps. */
  gaps: z.int(),
  /** Times of the hour that the clocks repeat: each names two instants. */
  repeatedTimes: z.int(),
  values: z.partialRecord(channelSchema, z.int()),
  /** What was missed, by its cause. */
  misses: z.partialRecord(missCauseSchema, z.int()),
  /** The first of the misses of each cause, with their places. */
  places: z.array(missSchema),
  /** The first rows of the file as they were understood. */
  firstRows: z.array(understoodRowSchema),
  /** Local days that the file tells of. */
  days: z.int(),
  /** Days of them that are new, or hold more than before. */
  daysChanged: z.int(),
  stepsAdded: z.int(),
  /** Steps that were there already and got a value more, or another one. */
  stepsChanged: z.int(),
  /** Days whose heat can be told. */
  daysWithHeat: z.int(),
});
export type ImportReport = z.infer<typeof importReportSchema>;

/** The beginning of a file, before anybody said what its columns are. */
export const fileHeadSchema = z.strictObject({
  encoding: z.enum(encodings),
  delimiter: z.enum(delimiters),
  decimal: z.enum(decimalMarks),
  /** Names of the columns. */
  header: z.array(z.string()),
  /** Cells of the first rows below, as they stand there. */
  rows: z.array(z.array(z.string())),
});
export type FileHead = z.infer<typeof fileHeadSchema>;

const importedEnding = '-imported';
/** A name has at most 40 letters, and so leaves this many before the ending. */
const mostLetters = 40 - importedEnding.length;

/** Whether a site's name says that its days came from another logger. */
export const isImportedName = (name: string): boolean => name.endsWith(importedEnding);

/** Name of the site that keeps the days of another logger at a loop. */
export const importedName = (name: string): string =>
  isImportedName(name) ? name : name.slice(0, mostLetters).replace(/-$/, '') + importedEnding;

/** Largest file that a screen hands over [bytes], and of one piece of it. Design choices. */
export const mostUploadBytes = 50 * 1024 * 1024;
export const pieceBytes = 36_000;

const uploadSchema = z.strictObject({ upload: z.uuid() });

/** What was understood of a file, and the site that keeps its days. */
const takenInSchema = z.strictObject({ site: z.string(), report: importReportSchema });
export type TakenIn = z.infer<typeof takenInSchema>;

const mapsSchema = keptMapsSchema.shape.maps;

/** What the screens ask of the host to take days of another logger in. */
export const importMethods = {
  /** Makes room for a file that comes in pieces. */
  beginUpload: {
    params: z.strictObject({ bytes: z.int().min(1).max(mostUploadBytes) }),
    result: uploadSchema,
  },
  /** The next piece, `at` bytes from the beginning. */
  uploadPiece: {
    params: uploadSchema.extend({ at: z.int().min(0), base64: z.base64().max((pieceBytes / 3) * 4) }),
    result: z.strictObject({ received: z.int() }),
  },
  dropUpload: { params: uploadSchema, result: z.boolean() },
  uploadHead: {
    params: uploadSchema.extend({ form: fileFormSchema }),
    result: fileHeadSchema,
  },
  /** Takes days in, or with `write: false` only tells what would be. */
  importDays: {
    params: uploadSchema.extend({
      site: z.string(),
      map: importMapSchema,
      clash: z.enum(clashes),
      write: z.boolean(),
      job: jobSchema,
    }),
    result: takenInSchema,
  },
  columnMaps: { params: z.strictObject({}), result: mapsSchema },
  keepColumnMap: {
    params: z.strictObject({ name: mapNameSchema, map: importMapSchema }),
    result: mapsSchema,
  },
  forgetColumnMap: { params: z.strictObject({ name: mapNameSchema }), result: mapsSchema },
} as const;
