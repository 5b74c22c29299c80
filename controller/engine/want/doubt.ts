import type { Command, Situation } from '../situation.ts';

/**
 * What the loop does while pan and store cannot be compared: nothing is begun, and what was begun ends. A pump
 * that runs on the word of a wrong sensor may cool the store for days.
 */
export function wantInDoubt({ facts }: Situation): Command | null {
  if (!facts.differenceIsDoubted) return null;
  const { differenceK } = facts;
  const values = differenceK === null ? {} : { differenceK };
  return { goal: 'empty', cause: { code: 'difference-doubted', values }, urgent: false, by: 'want' };
}
