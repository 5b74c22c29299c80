import {
  type Access,
  accessPaths,
  accessSchema,
  openAccess,
  tokenField,
} from '../../shared-types/monitor-access.ts';

/** What came of an attempt to sign in. */
export type SignInOutcome =
  | { readonly kind: 'in' | 'wrong' | 'unreachable' }
  /** Too many wrong tokens came from here; seconds until the next is looked at. */
  | { readonly kind: 'wait'; readonly waitS: number };

/** How this page says who it is to the server that it came from. */
export interface Gate {
  /** What the server last said that this page may do. */
  latest(): Access;
  /** Asks the server anew. @returns undefined when it does not answer. */
  refresh(): Promise<Access | undefined>;
  signIn(token: string): Promise<SignInOutcome>;
  signOut(): Promise<void>;
}

/** @param send - The browser's fetch; a test hands in its own. */
export function createGate(send: typeof fetch): Gate {
  let latest = openAccess;

  return {
    latest: () => latest,
    async refresh() {
      const answer = await send(accessPaths.access).catch(() => undefined);
      const body = answer?.ok === true ? await answer.json().catch(() => undefined) : undefined;
      const access = accessSchema.safeParse(body).data;
      if (access !== undefined) latest = access;
      return access;
    },
    async signIn(token) {
      const body = new URLSearchParams({ [tokenField]: token });
      const answer = await send(accessPaths.signIn, { method: 'POST', body }).catch(() => undefined);
      if (answer === undefined) return { kind: 'unreachable' };
      if (answer.ok) return { kind: 'in' };
      if (answer.status !== 429) return { kind: 'wrong' };
      return { kind: 'wait', waitS: Number(answer.headers.get('Retry-After')) };
    },
    async signOut() {
      await send(accessPaths.signOut, { method: 'POST' }).catch(() => undefined);
    },
  };
}
