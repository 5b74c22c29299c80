import type { MonitorApi } from '../../shared-types/monitor-api.ts';
import { createGate, type Gate } from './gate.ts';
import { openSocketDoor } from './socket-door.ts';

/** How the screens stand with their host. */
export type DoorState =
  | 'connecting'
  | 'open'
  | 'down'
  /** The monitor answers, and wants to know first who is there. */
  | 'shut';

/** The way to the host, and whether it can be gone at the moment. */
export interface Door extends MonitorApi {
  readonly state: () => DoorState;
  /** Hands every change of the state to the listener until the returned function is called. */
  watch(listener: (state: DoorState) => void): () => void;
  close(): void;
  /** How to sign in; undefined where nobody has to. */
  readonly gate?: Pick<Gate, 'latest' | 'signIn' | 'signOut'>;
}

/** What of a page the door needs: what a window of our own put there, and the page's address. */
export interface Page {
  readonly flatwater?: MonitorApi | undefined;
  readonly location: { readonly protocol: string; readonly host: string; reload?(): void };
}

/** Opens the way that there is: the window's own, or else a WebSocket to where the page came from. */
export function openDoor(page: Page): Door {
  if (page.flatwater !== undefined) return ownWindowDoor(page.flatwater);
  const scheme = page.location.protocol === 'https:' ? 'wss' : 'ws';
  const address = `${scheme}://${page.location.host}/monitor`;
  const gate = createGate((...asked) => fetch(...asked));
  const door = openSocketDoor({ connect: () => new WebSocket(address), access: gate.refresh });
  return {
    ...door,
    gate: {
      latest: gate.latest,
      async signIn(token) {
        const outcome = await gate.signIn(token);
        if (outcome.kind === 'in') door.knockAgain();
        return outcome;
      },
      async signOut() {
        await gate.signOut();
        // The page forgets by this all that it was shown.
        page.location.reload?.();
      },
    },
  };
}

function ownWindowDoor(api: MonitorApi): Door {
  return {
    call: (method, params) => api.call(method, params),
    listen: (listener) => api.listen(listener),
    state: () => 'open',
    // The host lives in the same program: it is there as long as the page is.
    watch: () => () => undefined,
    close: () => undefined,
  };
}
