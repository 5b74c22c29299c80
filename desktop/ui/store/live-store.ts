import { create } from 'zustand';
import { type Access, openAccess } from '../../../shared-types/monitor-access.ts';
import type { HostState, SiteLive } from '../../../shared-types/monitor-api.ts';
import type { DoorState } from '../door.ts';

/** A site as last heard, and when that was [ms of the page's steady clock]. */
export interface HeardSite {
  readonly live: SiteLive;
  readonly heardAtMs: number;
}

export interface LiveState {
  readonly door: DoorState;
  /** Whether the monitor wants a token, and what this page may do. */
  readonly access: Access;
  readonly host: HostState | null;
  /** True once the host has told all sites it knows. */
  readonly told: boolean;
  readonly sites: Readonly<Record<string, HeardSite>>;
  /** The site that is shown, from the first that was heard on; a person or the address chooses another. */
  readonly chosen: string | null;
  /** The page's steady clock, once a second [ms]: ages are counted on it. */
  readonly nowMs: number;
}

export const emptyLive: LiveState = {
  door: 'connecting',
  access: openAccess,
  host: null,
  told: false,
  sites: {},
  chosen: null,
  nowMs: 0,
};

/** What the host last said. Only the feed writes it. */
export const useLive = create<LiveState>(() => emptyLive);
