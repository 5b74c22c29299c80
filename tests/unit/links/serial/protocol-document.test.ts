import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  createFrameParser,
  encodeFrame,
  type Parsed,
  type SerialFrame,
} from '../../../../controller/links/serial/codec.ts';
import { maximumLineBytes } from '../../../../controller/links/serial/frames.ts';

const document = readFileSync(
  new URL('../../../../controller/links/serial/PROTOCOL.md', import.meta.url),
  'utf8',
);
const example = /```example\n([^`]*)```/.exec(document)?.[1] ?? '';
const lines = example.split('\n').filter((line) => line !== '');
const parse = (text: string): Parsed[] => createFrameParser().push(new TextEncoder().encode(text));
const frames = lines.map((line): readonly [string, SerialFrame] => {
  const [item] = parse(`${line.slice(2)}\n`);
  if (item?.ok !== true) throw new Error(`not understood: ${line}`);
  return [line.slice(0, 1), item.frame];
});

/** What the words around the example say that happens. */
const outputs = { pumpFraction: 1, drainOpen: false, drainPumpOn: false, exchangerPumpOn: false };
const safe = { pumpFraction: 0, drainOpen: true, drainPumpOn: false, exchangerPumpOn: false };
const story: readonly (readonly [string, SerialFrame])[] = [
  ['<', { kind: 'hello', sequence: 0, version: 1, role: 'device' }],
  ['>', { kind: 'hello', sequence: 0, version: 1, role: 'controller' }],
  ['<', { kind: 'hello', sequence: 1, version: 1, role: 'device' }],
  ['<', { kind: 'readings', sequence: 2, values: { outlet: 41.25, sheet: 'open-circuit', bottom: 23.0625 } }],
  ['<', { kind: 'feedback', sequence: 3, ...safe, expired: true }],
  ['>', { kind: 'outputs', sequence: 1, ...outputs, expiresInMs: 10_000 }],
  ['<', { kind: 'feedback', sequence: 4, ...outputs, expired: false }],
  [
    '<',
    { kind: 'readings', sequence: 5, values: { outlet: 40.875, sheet: 'open-circuit', bottom: 23.0625 } },
  ],
  ['<', { kind: 'feedback', sequence: 6, ...safe, expired: true }],
];

describe('the document of the line protocol', () => {
  it('tells its story in lines that the codec reads', () => {
    expect(frames).toEqual(story);
  });
  it('has lines that the codec writes, byte for byte', () => {
    const written = story.map(
      ([way, frame]) => `${way} ${new TextDecoder().decode(encodeFrame(frame)).trimEnd()}`,
    );
    expect(written).toEqual(lines);
  });
  it('opens with a line that is right', () => {
    const [, first = ''] = /```\n(!.*)\n/.exec(document) ?? [];
    expect(parse(`${first}\n`)).toMatchObject([{ ok: true, frame: { kind: 'readings', sequence: 17 } }]);
  });
  it('names the check value and the longest line that the code has', () => {
    expect(document).toContain('`29B1`');
    expect(document).toContain(`**${maximumLineBytes} bytes**`);
  });
});
