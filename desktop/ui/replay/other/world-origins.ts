import type { Comparison } from '../../../../shared-types/tuning.ts';
import { en } from '../../text/en.ts';

/** Where each part of the world came from, in words. */
export function worldLines({ world }: Pick<Comparison, 'world'>): readonly string[] {
  const parts = Object.keys(en.tuning.other.world) as (keyof Comparison['world'])[];
  return parts.map((part) => en.tuning.other.worldLine(en.tuning.other.world[part], world[part]));
}
