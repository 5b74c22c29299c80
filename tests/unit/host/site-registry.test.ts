import { describe, expect, it } from 'vitest';
import { createSiteRegistry } from '../../../desktop/host/site-registry.ts';
import { siteName, snapshot } from './samples.ts';

describe('createSiteRegistry', () => {
  it('counts the age of a snapshot from its arrival', () => {
    let nowMs = 5_000_000;
    const sites = createSiteRegistry(() => nowMs);
    sites.take({ kind: 'snapshot', site: siteName, message: snapshot() }, false);
    nowMs += 700;
    expect(sites.live(siteName)?.snapshotAgeMs).toBe(700);
  });

  it('takes the age of a snapshot that the broker had kept from its own calendar, unless that is simulated', () => {
    const sites = createSiteRegistry(() => 5_000_000);
    sites.take({ kind: 'snapshot', site: siteName, message: snapshot() }, true);
    expect(sites.live(siteName)?.snapshotAgeMs).toBe(4_000_000);
    sites.take({ kind: 'snapshot', site: siteName, message: snapshot({ clockSpeed: 60 }) }, true);
    expect(sites.live(siteName)?.snapshotAgeMs).toBe(0);
    sites.take({ kind: 'snapshot', site: siteName, message: snapshot({ simulatedClock: true }) }, true);
    expect(sites.live(siteName)?.snapshotAgeMs).toBe(0);
  });

  it('tells how far the controller’s calendar is ahead, by steps heard as they happen and at the wall’s speed', () => {
    const sites = createSiteRegistry(() => 940_000);
    const hear = (clockSpeed: number, retained: boolean, simulatedClock = false) => {
      const message = snapshot({ clockSpeed, simulatedClock });
      sites.take({ kind: 'snapshot', site: siteName, message }, retained);
      return sites.live(siteName)?.clockAheadMs;
    };
    expect(hear(1, true)).toBeNull();
    expect(hear(1, false)).toBe(60_000);
    expect(hear(1, true)).toBe(60_000);
    expect(hear(60, false)).toBeNull();
    expect(hear(1, false, true)).toBeNull();
  });

  it('forgets what the broker was told to forget, and that alone', () => {
    const sites = createSiteRegistry(() => 0);
    sites.take({ kind: 'snapshot', site: siteName, message: snapshot() }, false);
    sites.take({ kind: 'status', site: siteName, message: { schema: 1, state: 'online' } }, false);
    sites.take({ kind: 'cleared', site: siteName, what: 'snapshot' }, false);
    expect(sites.all()).toEqual([
      {
        name: siteName,
        status: { schema: 1, state: 'online' },
        site: null,
        snapshot: null,
        snapshotAgeMs: null,
        clockAheadMs: null,
      },
    ]);
  });

  it('has no site any more where everything was taken back, and room for another', () => {
    const sites = createSiteRegistry(() => 0);
    const status = (site: string) =>
      sites.take({ kind: 'status', site, message: { schema: 1, state: 'online' } }, false);
    for (let index = 0; index < 500; index++) status(`site-${index}`);
    expect(status('late')).toBe(false);
    sites.take({ kind: 'cleared', site: 'site-7', what: 'status' }, false);
    expect(sites.live('site-7')).toBeUndefined();
    expect(sites.all()).toHaveLength(499);
    expect(status('late')).toBe(true);
  });

  it('takes no more sites than it can keep, and still hears those it has', () => {
    const sites = createSiteRegistry(() => 0);
    const status = (site: string) =>
      sites.take({ kind: 'status', site, message: { schema: 1, state: 'online' } }, false);
    const taken = Array.from({ length: 600 }, (_, index) => status(`site-${index}`)).filter(Boolean);
    expect(taken).toHaveLength(500);
    expect(status('site-0')).toBe(true);
  });
});
