import type { Decision } from '../../shared-types/engine.ts';
import type { Side } from '../../shared-types/what-if.ts';
import type { Asked } from './decision-count.ts';

/** The reason that speaks for what one side does otherwise than its opposite. */
export function sayerOf(a: Asked, b: Asked): keyof Decision['reasons'] {
  if (a.phase !== b.phase) return 'phase';
  return a.outputs.pumpFraction !== b.outputs.pumpFraction ? 'pump' : 'drain';
}

/** What a side asks, with the reason that speaks for it. */
export function sideOf({ phase, outputs }: Asked, reason: string): Side {
  return { phase, pumpFraction: outputs.pumpFraction, drainOpen: outputs.drainOpen, reason };
}
