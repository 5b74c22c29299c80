import type { SensorFault } from '../../../shared-types/readings.ts';
import { crc16 } from './crc.ts';
import { faultWords, isKey, kindLetters } from './fields.ts';
import { maximumLineBytes, type SerialFrame } from './frames.ts';

const ascii = new TextEncoder();

/**
 * Bytes of one line, line feed included.
 *
 * @throws RangeError when the frame does not fit a line (split readings before), when a key cannot
 *   stand on the line, or when a number is not finite.
 */
export function encodeFrame(frame: SerialFrame): Uint8Array {
  const body = [kindLetters[frame.kind], String(frame.sequence), ...fieldsOf(frame)].join(' ');
  const check = crc16(ascii.encode(body)).toString(16).toUpperCase().padStart(4, '0');
  const line = ascii.encode(`!${body}*${check}\n`);
  if (line.length > maximumLineBytes) throw new RangeError(`line of ${line.length} bytes is too long`);
  return line;
}

/** Parts of a large set of readings, each of which fits a line. */
export function splitReadings(
  values: Readonly<Record<string, number | SensorFault>>,
): Record<string, number | SensorFault>[] {
  const room = maximumLineBytes - '!R 65535*FFFF\n'.length;
  const parts: [string, number | SensorFault][][] = [];
  let left = 0;
  for (const [key, value] of Object.entries(values)) {
    const length = readingText(key, value).length + 1;
    if (length > left) {
      parts.push([]);
      left = room;
    }
    left -= length;
    parts.at(-1)?.push([key, value]);
  }
  return parts.map((part) => Object.fromEntries(part));
}

function fieldsOf(frame: SerialFrame): string[] {
  switch (frame.kind) {
    case 'hello':
      return [`version=${frame.version}`, `role=${frame.role}`];
    case 'readings':
      return Object.entries(frame.values).map(([key, value]) => readingText(key, value));
    case 'feedback':
      return [
        `pump=${fractionText(frame.pumpFraction)}`,
        `drain=${frame.drainOpen === null ? '?' : bit(frame.drainOpen)}`,
        `drainPump=${bit(frame.drainPumpOn)}`,
        `exchanger=${bit(frame.exchangerPumpOn)}`,
        ...dumpText(frame.heatDumpOn),
        `expired=${bit(frame.expired)}`,
      ];
    case 'outputs':
      return [
        `pump=${fractionText(frame.pumpFraction)}`,
        `drain=${bit(frame.drainOpen)}`,
        `drainPump=${bit(frame.drainPumpOn)}`,
        `exchanger=${bit(frame.exchangerPumpOn)}`,
        ...dumpText(frame.heatDumpOn),
        `expires=${Math.round(frame.expiresInMs)}`,
      ];
    default:
      return assertNever(frame);
  }
}

/** A loop without a heat dump does not speak of one. */
function dumpText(on: boolean | undefined): string[] {
  return on === undefined ? [] : [`dump=${bit(on)}`];
}

function readingText(key: string, value: number | SensorFault): string {
  if (!isKey(key)) throw new RangeError(`'${key}' cannot stand on the line as a key`);
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new RangeError(`${key} is not a finite number`);
    return `${key}=${value}`;
  }
  const word = Object.entries(faultWords).find(([, fault]) => fault === value)?.[0];
  return `${key}=${word ?? 'unreadable'}`;
}

/** Three decimals resolve any pump; no exponent, so that a small device reads it with ease. */
function fractionText(fraction: number): string {
  if (!(fraction >= 0 && fraction <= 1)) throw new RangeError(`pump fraction ${fraction} is not 0 to 1`);
  return String(Number(fraction.toFixed(3)));
}

function bit(on: boolean): '0' | '1' {
  return on ? '1' : '0';
}

function assertNever(frame: never): never {
  throw new Error(`no such frame: ${JSON.stringify(frame)}`);
}
