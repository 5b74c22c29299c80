import { isIPv6 } from 'node:net';
import { RateLimiterMemory } from 'rate-limiter-flexible';
import { isLoopbackHost, plain } from './doorman.ts';

/** Wrong tokens that one address may give within the time, and that time [s]. Design choices. */
export const mostFailures = 5;
const failureSpanS = 900;

/**
 * Counts attempts to sign in, for each address by itself, but for those of this machine: by these come all visitors of
 * a proxy that stands here, and one who gives wrong tokens must not lock out the others. There the length of a token
 * alone keeps guessers out. It has 22 characters of 64 at least, at random: 2^132 are possible. A million guesses a
 * second for a hundred years are less than 2^52, and find one of two tokens with a chance below 2^-79.
 */
export interface FailureLimit {
  /** Counts an attempt. @returns seconds until the address may try again, or undefined while it may. */
  attempt(address: string): Promise<number | undefined>;
  /** Forgets an address's attempts, after a right token. */
  forget(address: string): Promise<void>;
}

export function createFailureLimit(): FailureLimit {
  const limiter = new RateLimiterMemory({ points: mostFailures, duration: failureSpanS });
  return {
    async attempt(address) {
      if (isLoopbackHost(plain(address))) return undefined;
      // Counted before the token is looked at: many attempts at a time get no more tries than one by one.
      const kept = await limiter.consume(sourceOf(address)).catch((over: { msBeforeNext: number }) => over);
      return 'consumedPoints' in kept && kept.consumedPoints > mostFailures
        ? Math.max(1, Math.ceil(kept.msBeforeNext / 1000))
        : undefined;
    },
    async forget(address) {
      await limiter.delete(sourceOf(address));
    },
  };
}

/** Whoever has one address of IPv6 has 2^64 of them (RFC 4291 section 2.5.4): these count as one. */
export function sourceOf(address: string): string {
  const bare = plain(address);
  if (!isIPv6(bare)) return bare;
  const [before = '', after] = bare.split('::');
  const left = before === '' ? [] : before.split(':');
  const right = after === undefined || after === '' ? [] : after.split(':');
  const zeros = after === undefined ? 0 : 8 - left.length - right.length;
  const groups = [...left, ...Array.from({ length: zeros }, () => '0'), ...right];
  return groups
    .slice(0, 4)
    .map((group) => Number.parseInt(group, 16).toString(16))
    .join(':');
}
