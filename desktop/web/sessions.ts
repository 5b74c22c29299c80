import { randomBytes } from 'node:crypto';
import type { Holder } from './tokens.ts';

/** Somebody who signed in, until they sign out or the time is over. */
export interface Session {
  readonly id: string;
  readonly holder: Holder;
  /** Aborted at the session's end, whichever comes first. */
  readonly ended: AbortSignal;
}

/** Who is signed in. Nothing of it outlives the monitor. */
export interface Sessions {
  begin(holder: Holder): Session;
  find(id: string | undefined): Session | undefined;
  end(id: string): void;
}

/** How long somebody stays signed in [ms], and how many at a time. Design choices. */
export const sessionLifeMs = 7 * 24 * 3_600_000;
const mostSessions = 200;
const idBytes = 32;

export function createSessions(lifeMs = sessionLifeMs, most = mostSessions): Sessions {
  const sessions = new Map<string, { session: Session; finish: () => void }>();

  function end(id: string): void {
    const entry = sessions.get(id);
    sessions.delete(id);
    entry?.finish();
  }

  return {
    begin(holder) {
      const [oldest] = sessions.keys();
      if (oldest !== undefined && sessions.size >= most) end(oldest);
      const id = randomBytes(idBytes).toString('base64url');
      const ending = new AbortController();
      const timer = setTimeout(() => end(id), lifeMs);
      timer.unref();
      const session: Session = { id, holder, ended: ending.signal };
      sessions.set(id, {
        session,
        finish() {
          clearTimeout(timer);
          ending.abort();
        },
      });
      return session;
    },
    find: (id) => (id === undefined ? undefined : sessions.get(id)?.session),
    end,
  };
}
