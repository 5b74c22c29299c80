import { delimiters, type ImportMap } from '../../shared-types/foreign-log.ts';

export type Encoding = NonNullable<ImportMap['encoding']>;
export type Delimiter = NonNullable<ImportMap['delimiter']>;
export type Decimal = NonNullable<ImportMap['decimal']>;

/** Encoding by the byte order mark, else UTF-8 where the bytes allow it, else Windows-1252. */
export function guessEncoding(head: Uint8Array): Encoding {
  if (head[0] === 0xff && head[1] === 0xfe) return 'utf-16le';
  try {
    // The end of the sample may cut a character in two: that is no fault of the file.
    new TextDecoder('utf-8', { fatal: true }).decode(head, { stream: true });
    return 'utf-8';
  } catch {
    return 'windows-1252';
  }
}

/** The delimiter that splits most lines of a sample alike; the one that stands first where it is a draw. */
export function guessDelimiter(sample: string): Delimiter {
  const lines = sample.split(/\r?\n/).filter((line) => line.trim() !== '');
  const scores = delimiters.map((delimiter) => {
    const counts = lines.map((line) => line.split(delimiter).length - 1);
    const inHead = counts[0] ?? 0;
    return inHead === 0 ? 0 : counts.filter((count) => count === inHead).length;
  });
  const best = Math.max(...scores);
  return best === 0 ? ',' : (delimiters[scores.indexOf(best)] as Delimiter);
}

/** A comma where cells look like 12,5 and none like 12.5. */
export function guessDecimal(sample: string, delimiter: Delimiter): Decimal {
  if (delimiter === ',') return '.';
  const cells = sample.split(/\r?\n/).flatMap((line) => line.split(delimiter));
  const like = (pattern: RegExp) => cells.some((cell) => pattern.test(cell.trim()));
  return like(/^"?-?\d+,\d+"?$/) && !like(/^"?-?\d+\.\d+"?$/) ? ',' : '.';
}
