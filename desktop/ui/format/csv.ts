/** A cell of a table that is written out; null is an empty one. */
export type CsvCell = string | number | null;

/** What a spreadsheet takes for the beginning of a formula. (Common practice.) */
const formulaStart = /^[=+\-@\t\r]/;

/**
 * A table as CSV after RFC 4180: CRLF at the end of each row, quotes where they are needed. Text that a
 * spreadsheet would take for a formula gets an apostrophe before it; numbers stay numbers.
 */
export function csvText(rows: readonly (readonly CsvCell[])[]): string {
  return rows.map((row) => `${row.map(cellText).join(',')}\r\n`).join('');
}

function cellText(cell: CsvCell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return Number.isFinite(cell) ? String(cell) : '';
  const harmless = formulaStart.test(cell) ? `'${cell}` : cell;
  return /[",\r\n]/.test(harmless) ? `"${harmless.replaceAll('"', '""')}"` : harmless;
}

/** A number with at most so many digits after the point, so that sums of parts do not end in a tail of nines. */
export const rounded = (value: number, digits: number): number => Number(value.toFixed(digits));

/** A name that every file system takes: letters, digits, dots and hyphens, at most 100 of them. */
export function fileName(parts: readonly string[], extension: string): string {
  const plain = parts.map((part) => part.replaceAll(/[^A-Za-z0-9]+/g, '-').replaceAll(/^-+|-+$/g, ''));
  const name = plain
    .filter((part) => part !== '')
    .join('-')
    .slice(0, 90);
  return `${name === '' ? 'flatwater' : name}.${extension}`;
}
