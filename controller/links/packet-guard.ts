/**
 * Watches the bytes of an MQTT connection for a packet that announces more than `mostBytes`.
 *
 * It reads only fixed headers: one byte of type and a remaining length of one to four bytes with seven
 * bits each (MQTT 3.1.1 section 2.2.3), and skips the rest.
 *
 * @returns a function that takes bytes as they come and is false from the first packet that is too large on.
 */
export function createPacketGuard(mostBytes: number): (bytes: Uint8Array) => boolean {
  let place: 'type' | 'length' | 'rest' = 'type';
  let remaining = 0;
  let lengthBytes = 0;
  let good = true;

  const takeLength = (byte: number): void => {
    remaining += (byte & 0x7f) * 128 ** lengthBytes;
    lengthBytes += 1;
    const last = (byte & 0x80) === 0;
    if (remaining > mostBytes || (!last && lengthBytes === 4)) good = false;
    if (last) place = remaining === 0 ? 'type' : 'rest';
  };
  return (bytes) => {
    let at = 0;
    while (good && at < bytes.length) {
      if (place === 'rest') {
        const skipped = Math.min(remaining, bytes.length - at);
        at += skipped;
        remaining -= skipped;
        if (remaining === 0) place = 'type';
      } else if (place === 'type') {
        at += 1;
        place = 'length';
        remaining = 0;
        lengthBytes = 0;
      } else {
        takeLength(bytes[at] ?? 0);
        at += 1;
      }
    }
    return good;
  };
}
