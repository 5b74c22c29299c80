/** Edge of the picture beside the clock [px]. */
export const iconPixels = 32;
/** Blue, green, red and opacity of the mark's ground and of its two lines of water. */
const ground = [0x79, 0x4e, 0x1f, 0xff] as const;
const water = [0xff, 0xff, 0xff, 0xff] as const;
const lineRows = [12, 13, 14, 18, 19, 20];
const lineFrom = 6;
const lineTo = 26;

/** The project's mark as a bitmap, four bytes a pixel, row by row. */
export function iconBitmap(): Buffer {
  const pixels = Array.from({ length: iconPixels ** 2 }, (_, index) => {
    const row = Math.floor(index / iconPixels);
    const column = index % iconPixels;
    return lineRows.includes(row) && column >= lineFrom && column < lineTo ? water : ground;
  });
  return Buffer.from(pixels.flat());
}
