import { describe, expect, it } from 'vitest';
import { crc16 } from '../../controller/links/serial/crc.ts';

const ascii = (text: string) => new TextEncoder().encode(text);

describe('CRC-16/IBM-3740', () => {
  it('gives the published check value for the digits 123456789: 0x29B1', () => {
    // Catalogue of parametrised CRC algorithms (G. Cook), entry CRC-16/IBM-3740.
    expect(crc16(ascii('123456789'))).toBe(0x29b1);
  });
  it('gives its start value for nothing', () => {
    expect(crc16(ascii(''))).toBe(0xffff);
  });
  it('leaves no remainder over a text and its own check, high byte first', () => {
    // Property of any such code without a final inversion.
    const text = ascii('!R 17 outlet=41.25');
    const check = crc16(text);
    expect(crc16(new Uint8Array([...text, check >> 8, check & 0xff]))).toBe(0);
  });
});
