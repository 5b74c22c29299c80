import { describe, expect, it } from 'vitest';
import { createPacketGuard } from '../../../controller/links/packet-guard.ts';

/** Sizes of the remaining length at which its coding grows a byte: MQTT 3.1.1 table 2.4. */
const table = [
  { length: 0, coded: [0x00] },
  { length: 127, coded: [0x7f] },
  { length: 128, coded: [0x80, 0x01] },
  { length: 16_383, coded: [0xff, 0x7f] },
  { length: 16_384, coded: [0x80, 0x80, 0x01] },
  { length: 2_097_151, coded: [0xff, 0xff, 0x7f] },
  { length: 2_097_152, coded: [0x80, 0x80, 0x80, 0x01] },
  { length: 268_435_455, coded: [0xff, 0xff, 0xff, 0x7f] },
];

describe('packet guard', () => {
  it.each(table)('a packet of $length bytes passes where so many may come', ({ length, coded }) => {
    expect(createPacketGuard(length)(new Uint8Array([0x30, ...coded]))).toBe(true);
  });
  it.each(table.filter(({ length }) => length > 0))('and not where one less may', ({ length, coded }) => {
    expect(createPacketGuard(length - 1)(new Uint8Array([0x30, ...coded]))).toBe(false);
  });
  it('a length of five bytes is malformed', () => {
    expect(createPacketGuard(1e9)(new Uint8Array([0x30, 0x80, 0x80, 0x80, 0x80]))).toBe(false);
  });

  it('finds the next header after any packet, in pieces of any size', () => {
    const small = [0x30, 0x03, 0xff, 0xff, 0xff];
    const ping = [0xc0, 0x00];
    const large = [0x30, 0x80, 0x01];
    const stream = new Uint8Array([...small, ...ping, ...small, ...large]);
    for (let size = 1; size <= stream.length; size++) {
      const guard = createPacketGuard(100);
      const verdicts = [];
      for (let at = 0; at < stream.length; at += size) verdicts.push(guard(stream.subarray(at, at + size)));
      expect(verdicts.at(-1)).toBe(false);
      expect(verdicts.slice(0, -1).every(Boolean)).toBe(true);
    }
  });

  it('stays shut once it has found one', () => {
    const guard = createPacketGuard(10);
    guard(new Uint8Array([0x30, 0x7f]));
    expect(guard(new Uint8Array([0xc0, 0x00]))).toBe(false);
  });
});
