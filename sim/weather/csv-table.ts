import { CsvError, type Info, parse } from 'csv-parse/sync';
import type { WeatherFault } from './weather-file.ts';

/** One record of the file and the line that it ends on, from 1. */
export interface CsvRow {
  readonly line: number;
  readonly cells: readonly string[];
}

export type CsvTable =
  | { readonly ok: true; readonly rows: readonly CsvRow[] }
  | { readonly ok: false; readonly fault: WeatherFault };

/** Control characters that no text holds, and what a decoder puts for bytes that are none. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for.
const notText = /[\u0000-\u0008\u000e-\u001f\ufffd]/;

/** Splits RFC 4180 text; CRLF or LF, a byte order mark and empty lines are fine. */
export function readCsvTable(text: string): CsvTable {
  if (text.trim() === '') return { ok: false, fault: { cause: 'empty' } };
  const strange = text.search(notText);
  if (strange >= 0) return { ok: false, fault: { cause: 'not-text', ...placeIn(text, strange) } };
  try {
    const records: unknown = parse(text, {
      bom: true,
      info: true,
      relax_column_count: true,
      skip_empty_lines: true,
      trim: true,
    });
    const rows = (records as { record: string[]; info: Info }[]).map(({ record, info }) => ({
      line: info.lines,
      cells: record,
    }));
    return { ok: true, rows };
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    return { ok: false, fault: csvFault(error) };
  }
}

function placeIn(text: string, index: number): { line: number; column: number } {
  const before = text.slice(0, index).split('\n');
  return { line: before.length, column: (before.at(-1) ?? '').length + 1 };
}

function csvFault(error: CsvError): WeatherFault {
  const line = Number(error['lines'] ?? 1);
  const column = Number(error['column'] ?? 0) + 1;
  if (error.code === 'CSV_QUOTE_NOT_CLOSED') return { cause: 'not-csv', line, column, detail: 'open-quote' };
  const stray = error.code === 'INVALID_OPENING_QUOTE' || error.code === 'CSV_INVALID_CLOSING_QUOTE';
  return { cause: 'not-csv', line, column, detail: stray ? 'stray-quote' : 'other' };
}

/** A plain decimal number; NaN for anything else, also for what JavaScript would take, such as 0x10 or nothing. */
export function numberIn(text: string | undefined): number {
  return /^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d+)?$/.test(text ?? '') ? Number(text) : Number.NaN;
}
