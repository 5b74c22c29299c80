import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createFrameParser, encodeFrame, type SerialFrame } from '../../../controller/links/serial/codec.ts';

const sequence = fc.integer({ min: 0, max: 65_535 });
const fraction = fc.integer({ min: 0, max: 1000 }).map((thousandths) => thousandths / 1000);
const key = fc.stringMatching(/^[A-Za-z0-9_.-]{1,16}$/);
const value = fc.oneof(
  fc.integer({ min: -400_000, max: 1_600_000 }).map((tenThousandths) => tenThousandths / 10_000),
  fc.double({ noNaN: true, noDefaultInfinity: true }).map((number) => (number === 0 ? 0 : number)),
  fc.constantFrom('open-circuit' as const, 'short-circuit' as const, 'unreadable' as const),
);
const switches = {
  drainPumpOn: fc.boolean(),
  exchangerPumpOn: fc.boolean(),
};
/** A loop without a heat dump does not speak of one. */
const heatDump = fc.constantFrom({}, { heatDumpOn: true }, { heatDumpOn: false });
const withDump = <F extends object>(frame: fc.Arbitrary<F>) =>
  fc.tuple(frame, heatDump).map(([one, dump]) => ({ ...one, ...dump }));

const frames: fc.Arbitrary<SerialFrame> = fc.oneof(
  fc.record({
    kind: fc.constant('hello' as const),
    sequence,
    version: fc.integer({ min: 1, max: 999 }),
    role: fc.constantFrom('device' as const, 'controller' as const),
  }),
  fc.record({
    kind: fc.constant('readings' as const),
    sequence,
    values: fc.dictionary(key, value, { maxKeys: 10, noNullPrototype: true }),
  }),
  withDump(
    fc.record({
      kind: fc.constant('feedback' as const),
      sequence,
      pumpFraction: fraction,
      drainOpen: fc.constantFrom(true, false, null),
      ...switches,
      expired: fc.boolean(),
    }),
  ),
  withDump(
    fc.record({
      kind: fc.constant('outputs' as const),
      sequence,
      pumpFraction: fraction,
      drainOpen: fc.boolean(),
      ...switches,
      expiresInMs: fc.integer({ min: 1000, max: 600_000 }),
    }),
  ),
);
/** Bytes without the start mark, which would open a line. */
const noise = fc
  .uint8Array({ maxLength: 40 })
  .map((bytes) => bytes.map((byte) => (byte === 0x21 ? 0 : byte)));

function join(parts: readonly Uint8Array[]): Uint8Array {
  return new Uint8Array(parts.flatMap((part) => [...part]));
}

function parseInPieces(bytes: Uint8Array, pieces: readonly number[]): SerialFrame[] {
  const parser = createFrameParser();
  const found: SerialFrame[] = [];
  let at = 0;
  for (let index = 0; at < bytes.length; index++) {
    const size = pieces[index % pieces.length] ?? 1;
    for (const item of parser.push(bytes.subarray(at, at + size))) if (item.ok) found.push(item.frame);
    at += size;
  }
  return found;
}

function flip(bytes: Uint8Array, bits: ReadonlySet<number>): Uint8Array {
  return bytes.map((byte, index) =>
    [...bits].filter((bit) => bit >> 3 === index).reduce((value, bit) => value ^ (1 << (bit & 7)), byte),
  );
}

const pieces = fc.array(fc.integer({ min: 1, max: 64 }), { minLength: 1, maxLength: 8 });

describe('line protocol, for any frames', () => {
  it('gives back what was sent, in pieces of any size, with any noise between', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(noise, frames), { maxLength: 8 }), pieces, (sent, sizes) => {
        const bytes = join(sent.flatMap(([before, frame]) => [before, encodeFrame(frame)]));
        expect(parseInPieces(bytes, sizes)).toEqual(sent.map(([, frame]) => frame));
      }),
    );
  });

  it('takes nothing from a line with one or two flipped bits, and the next line all the same', () => {
    fc.assert(
      fc.property(frames, frames, fc.nat(), fc.nat(), (harmed, next, first, second) => {
        const whole = encodeFrame(harmed);
        const bits = (whole.length - 1) * 8;
        const bytes = flip(whole, new Set([first % bits, second % bits]));
        const found = parseInPieces(join([bytes, encodeFrame(next)]), [1]);
        expect(found.at(-1)).toEqual(next);
        // A flip in the case of a hexadecimal digit changes nothing; everything else is found.
        for (const frame of found.slice(0, -1)) expect(frame).toEqual(harmed);
      }),
      { numRuns: 2000 },
    );
  });

  it('never throws and never takes a frame from random bytes', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 2000 }), pieces, (bytes, sizes) => {
        expect(parseInPieces(bytes, sizes)).toEqual([]);
      }),
    );
  });
});
