import type { IncomingMessage } from 'node:http';
import { sessionIdIn } from './cookie.ts';
import { createFailureLimit } from './failure-limit.ts';
import { createSessions, type Session } from './sessions.ts';
import { type Holder, holderOf, type Tokens } from './tokens.ts';

/** Somebody who was let in. */
export interface Visitor {
  readonly may: Holder;
  /** Aborted when the visitor has to leave; undefined where nobody signs in. */
  readonly ended?: AbortSignal;
}

export type SignIn =
  | { readonly ok: true; readonly session: Session }
  | { readonly ok: false; readonly waitS: number | undefined };

/** Who may enter. */
export interface Gate {
  readonly wantsToken: boolean;
  visitor(request: IncomingMessage): Visitor | undefined;
  signIn(request: IncomingMessage, token: string): Promise<SignIn>;
  signOut(request: IncomingMessage): void;
}

/** @param tokens - Without any, everybody who reaches the server may ask. */
export function createGate(tokens: Tokens | undefined): Gate {
  const sessions = createSessions();
  const limit = createFailureLimit();
  const sessionOf = ({ headers, socket }: IncomingMessage) =>
    sessions.find(sessionIdIn(headers.cookie, socket.localPort ?? 0));

  return {
    wantsToken: tokens !== undefined,
    visitor(request) {
      if (tokens === undefined) return { may: 'ask' };
      const session = sessionOf(request);
      return session === undefined ? undefined : { may: session.holder, ended: session.ended };
    },
    async signIn(request, token) {
      // A connection that is gone has no address; all such count as one.
      const address = request.socket.remoteAddress ?? '';
      const waitS = await limit.attempt(address);
      if (waitS !== undefined) return { ok: false, waitS };
      const holder = tokens === undefined ? undefined : holderOf(tokens, token);
      if (holder === undefined) return { ok: false, waitS: undefined };
      await limit.forget(address);
      const before = sessionOf(request);
      if (before !== undefined) sessions.end(before.id);
      return { ok: true, session: sessions.begin(holder) };
    },
    signOut(request) {
      const session = sessionOf(request);
      if (session !== undefined) sessions.end(session.id);
    },
  };
}
