import { createReadStream } from 'node:fs';
import { open } from 'node:fs/promises';
import { pipeline, Readable } from 'node:stream';
import { CsvError, type Info, parse } from 'csv-parse';
import type { FileForm, ImportMap, ImportReport } from '../../shared-types/foreign-log.ts';
import { type Zone, zoneOf } from '../weather/local-time.ts';
import { columnsOf } from './columns.ts';
import { guessDecimal, guessDelimiter, guessEncoding } from './guess.ts';
import { ImportRefused } from './import-refused.ts';
import type { Misses } from './misses.ts';
import { createTaker, type ForeignRow, type Taker } from './taker.ts';

interface ReadOptions {
  readonly misses: Misses;
  readonly onRow: (row: ForeignRow) => void;
  /** Told now and then how much of the file is read, 0 to 1. @returns false to give up. */
  readonly goOn: (doneFraction: number) => boolean;
}

/** Largest file that is read [bytes], a design choice. */
export const mostBytes = 200 * 1024 * 1024;

const sampleBytes = 65_536;
/** Longest record [characters]: an open quote must not swallow the file. */
const longestRecord = 100_000;

/** What reading alone can tell. */
export type ReadReport = Form & ReturnType<Taker['counts']>;

/** How foreign CSV is parsed: as leniently as a logger may write it. */
export const csvOptions = {
  bom: true,
  relax_column_count: true,
  relax_quotes: true,
  skip_empty_lines: true,
  trim: true,
  max_record_size: longestRecord,
} as const;

type ReadOutcome =
  | { readonly ok: true; readonly report: ReadReport }
  | { readonly ok: false; readonly faults: readonly string[] };

type Form = Pick<ImportReport, 'encoding' | 'delimiter' | 'decimal'>;

/**
 * Reads a foreign CSV row by row, without holding it. What was not understood is noted; rows out of order are
 * handed on as they come.
 *
 * Errors: values. @throws what the file system throws.
 */
export async function readForeignCsv(
  path: string,
  map: ImportMap,
  { misses, onRow, goOn }: ReadOptions,
): Promise<ReadOutcome> {
  const zone = zoneOf(map.time.zone);
  if (zone === undefined) return refused(`no zone is called '${map.time.zone}'`);
  const { bytes, size } = await headOf(path);
  if (size === 0) return refused('the file is empty');
  if (size > mostBytes) return refused(`the file is larger than ${mostBytes / 1024 / 1024} MB`);
  const form = formOf(bytes, map);
  const records = recordsOf(path, { ...form, headerLine: map.headerLine }, (read) => goOn(read / size));
  return await takeAll(records, form, { map, zone, misses, onRow });
}

interface Taking extends Pick<ReadOptions, 'misses' | 'onRow'> {
  readonly map: ImportMap;
  readonly zone: Zone;
}

async function takeAll(
  records: AsyncIterable<{ record: string[]; info: Info }>,
  form: Form,
  { map, zone, misses, onRow }: Taking,
): Promise<ReadOutcome> {
  let taker: Taker | undefined;
  try {
    for await (const { record, info } of records) {
      if (taker !== undefined) {
        taker.take(record, info.lines);
        continue;
      }
      const columns = columnsOf(record, map);
      if (!('time' in columns)) return { ok: false, faults: columns };
      const { format } = map.time;
      taker = createTaker({ columns, format, zone, decimal: form.decimal, misses, onRow });
    }
  } catch (thrown) {
    if (!(thrown instanceof CsvError)) throw thrown;
    if (taker === undefined) return refused(thrown.message);
    taker.breakOff(Number(thrown['lines'] ?? 1), thrown.message);
  }
  if (taker === undefined) return refused('the file has no header line');
  return { ok: true, report: { ...form, ...taker.counts() } };
}

const refused = (fault: string): ReadOutcome => ({ ok: false, faults: [fault] });

/** Form of a file by what its map says, else by its beginning. */
export function formOf(head: Uint8Array, map: FileForm): Form {
  const encoding = map.encoding ?? guessEncoding(head);
  const text = new TextDecoder(encoding).decode(head, { stream: true });
  const sample = text
    .split('\n')
    .slice(map.headerLine - 1)
    .join('\n');
  const delimiter = map.delimiter ?? guessDelimiter(sample);
  return { encoding, delimiter, decimal: map.decimal ?? guessDecimal(sample, delimiter) };
}

export async function headOf(path: string): Promise<{ bytes: Uint8Array; size: number }> {
  const file = await open(path);
  try {
    const { size } = await file.stat();
    const { buffer, bytesRead } = await file.read(new Uint8Array(sampleBytes), 0, sampleBytes, 0);
    return { bytes: buffer.subarray(0, bytesRead), size };
  } finally {
    await file.close();
  }
}

function recordsOf(
  path: string,
  { encoding, delimiter, headerLine }: Pick<Form, 'encoding' | 'delimiter'> & Pick<FileForm, 'headerLine'>,
  onRead: (bytes: number) => boolean,
) {
  const parser = parse({ ...csvOptions, delimiter, from_line: headerLine, info: true });
  // Hands a fault of the source on to whoever reads the records.
  pipeline(Readable.from(textOf(path, encoding, onRead)), parser, () => undefined);
  return parser as AsyncIterable<{ record: string[]; info: Info }>;
}

async function* textOf(path: string, encoding: string, onRead: (bytes: number) => boolean) {
  const decoder = new TextDecoder(encoding);
  let read = 0;
  for await (const chunk of createReadStream(path) as AsyncIterable<Uint8Array>) {
    read += chunk.length;
    if (!onRead(read)) throw new ImportRefused('it was given up; nothing was kept');
    yield decoder.decode(chunk, { stream: true });
  }
  yield decoder.decode();
}
