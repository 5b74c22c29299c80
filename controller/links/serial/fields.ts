import type { SensorFault } from '../../../shared-types/readings.ts';
import type { FrameFault, Parsed, SerialFrame } from './frames.ts';

/** Letters that open the body of each kind of frame. */
export const kindLetters = { hello: 'H', readings: 'R', feedback: 'F', outputs: 'O' } as const;
/** How a sensor's fault is written in place of its number. */
export const faultWords = {
  open: 'open-circuit',
  short: 'short-circuit',
  unreadable: 'unreadable',
} as const satisfies Record<string, SensorFault>;

const keyForm = /^[A-Za-z0-9_.-]{1,40}$/;
const numberForm = /^-?\d+(\.\d+)?([eE][+-]?\d+)?$/;
const wholeForm = /^\d{1,6}$/;

/** Whether a name can stand before the `=` of a reading. */
export function isKey(text: string): boolean {
  return keyForm.test(text);
}

type Fields = ReadonlyMap<string, string>;

/** Reads the body of a line whose check has held. */
export function parseBody(body: string): Parsed {
  const [letter = '', sequenceText = '', ...words] = body.split(' ');
  const sequence = whole(sequenceText, 0, 65_535);
  const fields = splitFields(words);
  if (!Object.values<string>(kindLetters).includes(letter)) return fault('unknown-kind');
  if (sequence === undefined || fields === undefined) return fault('wrong-fields');
  const frame = parseKind(letter, sequence, fields);
  return frame === undefined ? fault('wrong-fields') : { ok: true, frame };
}

function fault(name: FrameFault): Parsed {
  return { ok: false, fault: name };
}

function splitFields(words: readonly string[]): Fields | undefined {
  const fields = new Map<string, string>();
  for (const word of words) {
    const at = word.indexOf('=');
    const key = word.slice(0, at);
    if (at < 1 || !isKey(key) || fields.has(key)) return undefined;
    fields.set(key, word.slice(at + 1));
  }
  return fields;
}

function parseKind(letter: string, sequence: number, fields: Fields): SerialFrame | undefined {
  if (letter === kindLetters.hello) return parseHello(sequence, fields);
  if (letter === kindLetters.readings) return parseReadings(sequence, fields);
  if (letter === kindLetters.feedback) return parseFeedback(sequence, fields);
  return parseOutputs(sequence, fields);
}

/** Fields that a version adds later are left unread. */
function parseHello(sequence: number, fields: Fields): SerialFrame | undefined {
  const version = whole(fields.get('version'), 1, 999);
  const role = fields.get('role');
  if (version === undefined || (role !== 'device' && role !== 'controller')) return undefined;
  return { kind: 'hello', sequence, version, role };
}

function parseReadings(sequence: number, fields: Fields): SerialFrame | undefined {
  const values: Record<string, number | SensorFault> = Object.create(null);
  for (const [key, text] of fields) {
    const value = isFaultWord(text) ? faultWords[text] : decimal(text);
    if (value === undefined) return undefined;
    values[key] = value;
  }
  return { kind: 'readings', sequence, values: { ...values } };
}

function isFaultWord(text: string): text is keyof typeof faultWords {
  return Object.hasOwn(faultWords, text);
}

function parseFeedback(sequence: number, fields: Fields): SerialFrame | undefined {
  const pumpFraction = fraction(fields.get('pump'));
  const drainOpen = fields.get('drain') === '?' ? null : bit(fields.get('drain'));
  const drainPumpOn = bit(fields.get('drainPump'));
  const exchangerPumpOn = bit(fields.get('exchanger'));
  const dump = dumpOf(fields);
  const expired = bit(fields.get('expired'));
  if (pumpFraction === undefined || drainOpen === undefined) return undefined;
  if (drainPumpOn === undefined || exchangerPumpOn === undefined || expired === undefined) return undefined;
  if (dump === undefined) return undefined;
  return {
    kind: 'feedback',
    sequence,
    pumpFraction,
    drainOpen,
    drainPumpOn,
    exchangerPumpOn,
    ...dump,
    expired,
  };
}

function parseOutputs(sequence: number, fields: Fields): SerialFrame | undefined {
  const pumpFraction = fraction(fields.get('pump'));
  const drainOpen = bit(fields.get('drain'));
  const drainPumpOn = bit(fields.get('drainPump'));
  const exchangerPumpOn = bit(fields.get('exchanger'));
  const dump = dumpOf(fields);
  const expiresInMs = whole(fields.get('expires'), 1000, 600_000);
  if (pumpFraction === undefined || drainOpen === undefined || expiresInMs === undefined) return undefined;
  if (drainPumpOn === undefined || exchangerPumpOn === undefined || dump === undefined) return undefined;
  return {
    kind: 'outputs',
    sequence,
    pumpFraction,
    drainOpen,
    drainPumpOn,
    exchangerPumpOn,
    ...dump,
    expiresInMs,
  };
}

/** The one field that a loop without such an output leaves away; undefined where it is not what it has to be. */
function dumpOf(fields: Fields): { readonly heatDumpOn?: boolean } | undefined {
  const text = fields.get('dump');
  if (text === undefined) return {};
  const heatDumpOn = bit(text);
  return heatDumpOn === undefined ? undefined : { heatDumpOn };
}

function whole(text: string | undefined, least: number, most: number): number | undefined {
  if (text === undefined || !wholeForm.test(text)) return undefined;
  const value = Number(text);
  return value >= least && value <= most ? value : undefined;
}

function decimal(text: string | undefined): number | undefined {
  if (text === undefined || !numberForm.test(text)) return undefined;
  const value = Number(text);
  return Number.isFinite(value) ? value : undefined;
}

function fraction(text: string | undefined): number | undefined {
  const value = decimal(text);
  return value !== undefined && value >= 0 && value <= 1 ? value : undefined;
}

function bit(text: string | undefined): boolean | undefined {
  if (text === '1') return true;
  return text === '0' ? false : undefined;
}
