import { readFileSync, writeFileSync } from 'node:fs';
import { z } from 'zod';

const boundsSchema = z.strictObject({ x: z.int(), y: z.int(), width: z.int(), height: z.int() });
export type Bounds = z.infer<typeof boundsSchema>;

const placeSchema = z.strictObject({ bounds: boundsSchema, maximized: z.boolean() });
/** Where the window stood when it was last seen. */
export type Place = z.infer<typeof placeSchema>;

/** Part of the window's top that has to lie on a display, so that a hand can get hold of it [px]. Design choices. */
const gripWidth = 120;
const gripHeight = 32;

/** @returns undefined where nothing was kept, or nothing that can be read. */
export function readPlace(path: string): Place | undefined {
  try {
    return placeSchema.safeParse(JSON.parse(readFileSync(path, 'utf8'))).data;
  } catch {
    return undefined;
  }
}

/** Keeps the place. A disk that is full costs the place, nothing else. */
export function writePlace(path: string, place: Place): void {
  try {
    writeFileSync(path, JSON.stringify(place));
  } catch (thrown) {
    console.error('the place of the window is not kept:', thrown);
  }
}

/**
 * Where the window may stand again: on a display that is still there, and no larger than it.
 * @param areas - What each display leaves to windows.
 * @returns undefined when its top would lie where nobody can reach it.
 */
export function placeOn(areas: readonly Bounds[], { x, y, width, height }: Bounds): Bounds | undefined {
  const area = areas.find(
    (one) =>
      Math.min(x + width, one.x + one.width) - Math.max(x, one.x) >= gripWidth &&
      y >= one.y &&
      y + gripHeight <= one.y + one.height,
  );
  if (area === undefined) return undefined;
  return { x, y, width: Math.min(width, area.width), height: Math.min(height, area.height) };
}
