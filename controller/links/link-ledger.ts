import type { LinkHealth } from '../../shared-types/messages.ts';
import type { LinkReport } from './link.ts';

/** Counts what a link takes, ignores and loses, and reports each cause once. */
export interface LinkLedger {
  taken(): void;
  /** A message was ignored, wholly or in part; causes that were reported before are only counted. */
  ignored(...causes: readonly string[]): void;
  connected(): void;
  /** The link is down; `cause` is said once until it is up again. */
  disconnected(cause: string): void;
  health(): LinkHealth;
}

/**
 * @param name - How messages call the other end, such as `broker mqtt://127.0.0.1:1883`.
 */
export function createLinkLedger(
  kind: LinkHealth['kind'],
  name: string,
  report: (report: LinkReport) => void,
): LinkLedger {
  const counts = { taken: 0, ignored: 0, losses: 0 };
  const reported = new Set<string>();
  let lastIgnored: string | null = null;
  let state: 'starting' | 'up' | 'down' = 'starting';
  return {
    taken: () => {
      counts.taken += 1;
    },
    ignored: (...causes) => {
      counts.ignored += 1;
      lastIgnored = causes.at(-1) ?? null;
      for (const text of causes) if (!reported.has(text)) report({ kind: 'message-ignored', text });
      for (const text of causes) reported.add(text);
    },
    connected: () => {
      if (state === 'down') report({ kind: 'link-back', text: `${name} is back` });
      state = 'up';
    },
    disconnected: (cause) => {
      if (state === 'up') counts.losses += 1;
      if (state !== 'down')
        report({
          kind: 'link-lost',
          text: `${name} ${state === 'up' ? 'is lost' : 'is not reached'}: ${cause}`,
        });
      state = 'down';
    },
    health: () => ({ kind, connected: state === 'up', ...counts, lastIgnored }),
  };
}
