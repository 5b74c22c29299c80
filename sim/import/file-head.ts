import { CsvError } from 'csv-parse';
import { parse } from 'csv-parse/sync';
import type { FileForm, FileHead } from '../../shared-types/foreign-log.ts';
import { ImportRefused } from './import-refused.ts';
import { csvOptions, formOf, headOf } from './read.ts';

/** Rows that are shown, and of each so many columns and characters. Design choices. */
const shownRows = 5;
const mostColumns = 200;
const mostCharacters = 200;

/**
 * The beginning of a foreign file: how it seems to be written, the names of its columns, its first rows.
 *
 * @throws ImportRefused when nothing of it can be read as CSV, and what the file system throws.
 */
export async function readFileHead(path: string, form: FileForm): Promise<FileHead> {
  const { bytes, size } = await headOf(path);
  if (size === 0) throw new ImportRefused('the file is empty');
  const { encoding, delimiter, decimal } = formOf(bytes, form);
  const text = new TextDecoder(encoding).decode(bytes, { stream: true });
  // The sample may end within a line: what is cut in two is no row.
  const whole = size > bytes.length ? text.slice(0, text.lastIndexOf('\n') + 1) : text;
  const [header, ...rows] = recordsOf(whole, delimiter, form.headerLine);
  if (header === undefined) throw new ImportRefused(`line ${form.headerLine} names no columns`);
  return { encoding, delimiter, decimal, header: [...header], rows: rows.map((row) => [...row]) };
}

function recordsOf(text: string, delimiter: string, headerLine: number): string[][] {
  try {
    const records: unknown = parse(text, {
      ...csvOptions,
      ...{ delimiter, from_line: headerLine, to: shownRows + 1 },
    });
    return (records as string[][]).map((cells) =>
      cells.slice(0, mostColumns).map((cell) => cell.slice(0, mostCharacters)),
    );
  } catch (thrown) {
    if (thrown instanceof CsvError) throw new ImportRefused(`no CSV: ${thrown.message}`);
    throw thrown;
  }
}
