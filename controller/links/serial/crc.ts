/**
 * CRC-16/IBM-3740: polynomial 0x1021, start 0xFFFF, bits not reflected, nothing added at the end.
 *
 * @param bytes - What is protected, any length.
 * @returns 0 to 0xFFFF.
 *
 * Source: catalogue of parametrised CRC algorithms (G. Cook), whose check value for the nine ASCII
 * digits 123456789 is 0x29B1; a test meets it.
 */
export function crc16(bytes: Uint8Array): number {
  let crc = 0xffff;
  for (const byte of bytes) {
    crc ^= byte << 8;
    for (let bit = 0; bit < 8; bit++) crc = (crc & 0x8000) !== 0 ? (crc << 1) ^ 0x1021 : crc << 1;
    crc &= 0xffff;
  }
  return crc;
}
