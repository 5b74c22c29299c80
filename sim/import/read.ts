import { createReadStream } from 'node:fs';
import { open } from 'node:fs/promises';
import { Readable } from 'node:stream';
import { CsvError, type Info, parse } from 'csv-parse';
import { type Zone, zoneOf } from '../weather/local-time.ts';
import { columnsOf } from './columns.ts';
import { guessDecimal, guessDelimiter, guessEncoding } from './guess.ts';
import type { ImportMap } from './map.ts';
import type { ImportReport } from './report.ts';
import { createTaker, type ForeignRow, type Taker } from './taker.ts';

interface ReadOptions {
  readonly onRow?: (row: ForeignRow) => void;
  /** Told now and then how much of the file is read, 0 to 1. */
  readonly onProgress?: (doneFraction: number) => void;
}

/** Largest file that is read [bytes], a design choice. */
export const mostBytes = 200 * 1024 * 1024;

const sampleBytes = 65_536;
/** Longest record [characters]: an open quote must not swallow the file. */
const longestRecord = 100_000;

type ReadOutcome =
  | { readonly ok: true; readonly report: ImportReport }
  | { readonly ok: false; readonly faults: readonly string[] };

type Form = Pick<ImportReport, 'encoding' | 'delimiter' | 'decimal'>;

/**
 * Reads a foreign CSV row by row, without holding it. Rows out of order and rows of an instant that was there
 * already are noted and left out.
 *
 * Errors: values. @throws what the file system throws.
 */
export async function readForeignCsv(
  path: string,
  map: ImportMap,
  { onRow = () => undefined, onProgress = () => undefined }: ReadOptions = {},
): Promise<ReadOutcome> {
  const zone = zoneOf(map.time.zone);
  if (zone === undefined) return refused(`no zone is called '${map.time.zone}'`);
  const { bytes, size } = await headOf(path);
  if (size === 0) return refused('the file is empty');
  if (size > mostBytes) return refused(`the file is larger than ${mostBytes / 1024 / 1024} MB`);
  const form = formOf(bytes, map);
  const records = recordsOf(path, form, (read) => onProgress(read / size));
  return await takeAll(records, form, { map, zone, onRow });
}

interface Taking {
  readonly map: ImportMap;
  readonly zone: Zone;
  readonly onRow: (row: ForeignRow) => void;
}

async function takeAll(
  records: AsyncIterable<{ record: string[]; info: Info }>,
  form: Form,
  { map, zone, onRow }: Taking,
): Promise<ReadOutcome> {
  let taker: Taker | undefined;
  try {
    for await (const { record, info } of records) {
      if (taker !== undefined) {
        taker.take(record, info.lines);
        continue;
      }
      const columns = columnsOf(record, map);
      if (!('timeIndex' in columns)) return { ok: false, faults: columns };
      const { column: timeColumn, format } = map.time;
      taker = createTaker({ columns, timeColumn, format, zone, decimal: form.decimal, onRow });
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

function formOf(head: Uint8Array, map: ImportMap): Form {
  const encoding = map.encoding ?? guessEncoding(head);
  const sample = new TextDecoder(encoding).decode(head, { stream: true });
  const delimiter = map.delimiter ?? guessDelimiter(sample);
  return { encoding, delimiter, decimal: map.decimal ?? guessDecimal(sample, delimiter) };
}

async function headOf(path: string): Promise<{ bytes: Uint8Array; size: number }> {
  const file = await open(path);
  try {
    const { size } = await file.stat();
    const { buffer, bytesRead } = await file.read(new Uint8Array(sampleBytes), 0, sampleBytes, 0);
    return { bytes: buffer.subarray(0, bytesRead), size };
  } finally {
    await file.close();
  }
}

function recordsOf(path: string, { encoding, delimiter }: Form, onRead: (bytes: number) => void) {
  const parser = parse({
    bom: true,
    delimiter,
    info: true,
    relax_column_count: true,
    relax_quotes: true,
    skip_empty_lines: true,
    trim: true,
    max_record_size: longestRecord,
  });
  return Readable.from(textOf(path, encoding, onRead)).pipe(parser) as AsyncIterable<{
    record: string[];
    info: Info;
  }>;
}

async function* textOf(path: string, encoding: string, onRead: (bytes: number) => void) {
  const decoder = new TextDecoder(encoding);
  let read = 0;
  for await (const chunk of createReadStream(path) as AsyncIterable<Uint8Array>) {
    read += chunk.length;
    onRead(read);
    yield decoder.decode(chunk, { stream: true });
  }
  yield decoder.decode();
}
