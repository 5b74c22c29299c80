import { createHash, timingSafeEqual } from 'node:crypto';

/** What the holder of a token may do. */
export type Holder = 'ask' | 'look';
export const holders = ['ask', 'look'] as const satisfies readonly Holder[];

/** The tokens that open the monitor to other machines. */
export type Tokens = Readonly<Partial<Record<Holder, string>>>;

/**
 * Whose token this is. Digests of equal length are compared, each of them every time, in a time that
 * tells nothing about how much of a wrong token was right.
 */
export function holderOf(tokens: Tokens, given: string): Holder | undefined {
  const digest = digestOf(given);
  let found: Holder | undefined;
  for (const holder of holders) {
    const token = tokens[holder];
    if (token !== undefined && timingSafeEqual(digestOf(token), digest)) found ??= holder;
  }
  return found;
}

const digestOf = (text: string) => createHash('sha256').update(text).digest();
