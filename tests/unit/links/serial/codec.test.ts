import { describe, expect, it } from 'vitest';
import {
  createFrameParser,
  encodeFrame,
  type Parsed,
  type SerialFrame,
  splitReadings,
} from '../../../../controller/links/serial/codec.ts';
import { crc16 } from '../../../../controller/links/serial/crc.ts';
import { maximumLineBytes } from '../../../../controller/links/serial/frames.ts';

const ascii = (text: string) => new TextEncoder().encode(text);
/** A line with a right check around any body. */
const line = (body: string) => `!${body}*${crc16(ascii(body)).toString(16).toUpperCase().padStart(4, '0')}\n`;
const parse = (text: string): Parsed[] => createFrameParser().push(ascii(text));
/** Items in short: a frame's number, or the fault. */
const short = (text: string) => parse(text).map((item) => (item.ok ? item.frame.sequence : item.fault));

const good = line('R 5 outlet=41.25');
const badCrc = good.replace(/\*..../, '*0000');

describe('what the parser makes of the bytes on a line', () => {
  it.each([
    ['a line', good, [5]],
    ['a line that ends with carriage return and line feed', good.replace('\n', '\r\n'), [5]],
    ['a check in small letters', good.replace(/\*.*/, (check) => check.toLowerCase()), [5]],
    ['two lines', good + line('R 6'), [5, 6]],
    ['empty lines between', `\n\r\n${good}\n\n${good}`, [5, 5]],
    ['noise before a line', `xyz${good}`, ['noise', 5]],
    ['noise on a line of its own', `xyz\n${good}`, ['noise', 5]],
    ['a half line, then a whole one', `!R 5 outl${good}`, ['half-line', 5]],
    ['a half line that ended', `!R 5 outlet=4\n${good}`, ['half-line', 5]],
    ['a lost line feed', `${good.trimEnd()}${good}`, ['half-line', 5]],
    ['a wrong check', `${badCrc}${good}`, ['wrong-crc', 5]],
    ['a changed digit', `${good.replace('41', '91')}${good}`, ['wrong-crc', 5]],
    ['a check that is too short', `${good.slice(0, -2)}\n${good}`, ['half-line', 5]],
    ['a byte that is not printable', `${line('R 5 outlet\t=1')}${good}`, ['half-line', 5]],
    ['another kind', `${line('Z 5 a=1')}${good}`, ['unknown-kind', 5]],
    ['a kind of two letters', line('RR 5'), ['unknown-kind']],
    ['nothing but a mark', `!\n${good}`, ['half-line', 5]],
  ])('%s', (_what, text, items) => {
    expect(short(text)).toEqual(items);
  });

  it.each([
    'R',
    'R x a=1',
    'R -1 a=1',
    'R 65536 a=1',
    'R 5 a',
    'R 5 =1',
    'R 5 a=',
    'R 5 a=1 a=2',
    'R 5 a=1,5',
    'R 5 a=+1',
    'R 5 a=NaN',
    'R 5 a=1e999',
    'R 5 a=0x10',
    'R 5 a=.5',
    'R 5 a=broken',
    'R 5  a=1',
    'R 5 a=1 ',
    `R 5 ${'k'.repeat(41)}=1`,
    'H 0 version=1',
    'H 0 version=0 role=device',
    'H 0 version=1 role=monitor',
    'F 0 pump=2 drain=1 drainPump=0 exchanger=0 expired=0',
    'F 0 pump=1 drain=yes drainPump=0 exchanger=0 expired=0',
    'F 0 pump=1 drain=1 drainPump=0 exchanger=0',
    'O 0 pump=1 drain=? drainPump=0 exchanger=0 expires=60000',
    'O 0 pump=1 drain=1 drainPump=0 exchanger=0 expires=999',
    'O 0 pump=1 drain=1 drainPump=0 exchanger=0 expires=600001',
    'O 0 pump=1 drain=1 drainPump=0 exchanger=0',
    'O 0 pump=1.01 drain=1 drainPump=0 exchanger=0 expires=60000',
    'O 0 pump=1 drain=1 exchanger=0 expires=60000',
    'O 0 pump=1 drain=1 drainPump=0 exchanger=0 dump=2 expires=60000',
    'F 0 pump=1 drain=1 drainPump=0 exchanger=0 dump=? expired=0',
  ])("takes nothing from the unharmed line '%s'", (body) => {
    expect(short(line(body))).toEqual(['wrong-fields']);
  });

  it('leaves fields that it does not know unread', () => {
    expect(short(line('O 3 pump=1 drain=1 drainPump=0 exchanger=0 expires=60000 later=1'))).toEqual([3]);
  });

  it('takes the longest line, and leaves aside one that is a byte longer', () => {
    const bodyOf = (length: number) => `R 5 ${'k'.repeat(30)}=1.${'0'.repeat(length - 37)}`;
    const longest = line(bodyOf(maximumLineBytes - '!*FFFF\n'.length));
    expect(longest).toHaveLength(maximumLineBytes);
    expect(short(longest)).toEqual([5]);
    expect(short(line(bodyOf(maximumLineBytes - '!*FFFF\n'.length + 1)) + good)).toEqual(['too-long', 5]);
  });

  it('says once that a line is too long, however long it is', () => {
    expect(short(`!${'x'.repeat(100_000)}\n${good}`)).toEqual(['too-long', 5]);
  });
});

describe('what the encoder writes', () => {
  it.each<[string, SerialFrame]>([
    ['a key with a space', { kind: 'readings', sequence: 0, values: { 'pan outlet': 1 } }],
    ['a number that is none', { kind: 'readings', sequence: 0, values: { a: Number.NaN } }],
    [
      'readings that fit no line',
      {
        kind: 'readings',
        sequence: 0,
        values: Object.fromEntries(Array.from({ length: 60 }, (_, index) => [`channel${index}`, 1])),
      },
    ],
  ])('refuses %s', (_what, frame) => {
    expect(() => encodeFrame(frame)).toThrow(RangeError);
  });

  it('speaks of a heat dump only where there is one', () => {
    const outputs = { pumpFraction: 1, drainOpen: false, drainPumpOn: false, exchangerPumpOn: false };
    const frames: SerialFrame[] = [
      { kind: 'outputs', sequence: 0, ...outputs, heatDumpOn: true, expiresInMs: 60_000 },
      { kind: 'outputs', sequence: 1, ...outputs, expiresInMs: 60_000 },
      { kind: 'feedback', sequence: 2, ...outputs, heatDumpOn: false, expired: false },
    ];
    const texts = frames.map((frame) => new TextDecoder().decode(encodeFrame(frame)));
    expect(texts.map((text) => / dump=\d /.exec(text)?.[0])).toEqual([' dump=1 ', undefined, ' dump=0 ']);
    expect(texts.map(parse)).toEqual(frames.map((frame) => [{ ok: true, frame }]));
  });

  it('keeps a pump fraction to three decimals, without an exponent', () => {
    const outputs = { drainOpen: true, drainPumpOn: false, exchangerPumpOn: false, expiresInMs: 60_000 };
    const text = (pumpFraction: number) =>
      new TextDecoder().decode(encodeFrame({ kind: 'outputs', sequence: 0, pumpFraction, ...outputs }));
    expect(text(1 / 3)).toContain(' pump=0.333 ');
    expect(text(1e-9)).toContain(' pump=0 ');
  });

  it('splits many readings into lines that fit, all of them and in order', () => {
    const values = Object.fromEntries(
      Array.from({ length: 60 }, (_, index) => [`channel-${index}`, index / 7]),
    );
    const parts = splitReadings(values);
    const lines = parts.map((part) => encodeFrame({ kind: 'readings', sequence: 65_535, values: part }));
    expect(lines.length).toBeGreaterThan(1);
    expect(Object.assign({}, ...parts)).toEqual(values);
    // As few as can be: no line could have taken the first reading of the next.
    expect(lines.slice(0, -1).every(({ length }) => length > maximumLineBytes - 40)).toBe(true);
  });
});
