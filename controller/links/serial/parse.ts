import { crc16 } from './crc.ts';
import { parseBody } from './fields.ts';
import { maximumLineBytes, type Parsed } from './frames.ts';

const startMark = 0x21;
const lineFeed = 0x0a;
const carriageReturn = 0x0d;
/** The line feed that follows. */
const longestBeforeEnd = maximumLineBytes - 1;

export interface FrameParser {
  /** Takes bytes as they come, in any pieces, and gives what they complete, in order. */
  push(bytes: Uint8Array): Parsed[];
}

/**
 * Parser of the line protocol. It knows no port, holds at most one line, and takes up again at the
 * next start mark whatever came before.
 */
export function createFrameParser(): FrameParser {
  const line = new Uint8Array(longestBeforeEnd);
  let length = 0;
  let noisy = false;
  /** The rest of a line that was already reported as too long. */
  let skipping = false;

  /** Gives at most one item for a byte: a frame, or the fault that the byte ends. */
  const take = (byte: number): Parsed | undefined => {
    if (byte === startMark) {
      const broken = faultBefore();
      begin(1);
      line[0] = byte;
      return broken;
    }
    if (byte === lineFeed) {
      const item = length > 0 ? parseLine(line.subarray(0, length)) : faultBefore();
      begin(0);
      return item;
    }
    if (length === 0) {
      noisy ||= !skipping && byte !== carriageReturn;
      return undefined;
    }
    if (length === longestBeforeEnd) {
      begin(0);
      skipping = true;
      return { ok: false, fault: 'too-long' };
    }
    line[length] = byte;
    length += 1;
    return undefined;
  };

  const begin = (taken: 0 | 1): void => {
    length = taken;
    noisy = false;
    skipping = false;
  };

  const faultBefore = (): Parsed | undefined => {
    if (length > 0) return { ok: false, fault: 'half-line' };
    return noisy ? { ok: false, fault: 'noise' } : undefined;
  };

  return {
    push: (bytes) => {
      const items: Parsed[] = [];
      for (const byte of bytes) {
        const item = take(byte);
        if (item !== undefined) items.push(item);
      }
      return items;
    },
  };
}

/** A line from its start mark up to, and without, its line feed. */
function parseLine(line: Uint8Array): Parsed {
  const end = line.at(-1) === carriageReturn ? line.length - 1 : line.length;
  const text = String.fromCharCode(...line.subarray(1, end));
  const match = /^([\x20-\x7e]*)\*([0-9A-Fa-f]{4})$/.exec(text);
  if (match === null) return { ok: false, fault: 'half-line' };
  const [, body = '', check = ''] = match;
  const bytes = line.subarray(1, 1 + body.length);
  if (crc16(bytes) !== Number.parseInt(check, 16)) return { ok: false, fault: 'wrong-crc' };
  return parseBody(body);
}
