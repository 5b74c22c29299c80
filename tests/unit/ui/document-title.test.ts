import { expect, test } from 'vitest';
import { documentTitle } from '../../../desktop/ui/shell/document-title.ts';
import { emptyLive, type LiveState } from '../../../desktop/ui/store/live-store.ts';
import type { Alarm } from '../../../shared-types/alarms.ts';
import { testLive, testSnapshot } from '../../support/fake-monitor/snapshot.ts';

const alarm = (state: Alarm['state']): Alarm => ({
  code: 'frost-danger',
  priority: 'urgent',
  state,
  active: true,
  sinceMs: 1,
  values: {},
  text: 'Frost.',
});
const heard = (name: string, ...alarms: Alarm[]) => ({
  live: testLive({ name, snapshot: testSnapshot({ alarms }) }),
  heardAtMs: 0,
});
const of = (sites: LiveState['sites'], change: Partial<LiveState> = {}): LiveState => ({
  ...emptyLive,
  door: 'open',
  sites,
  ...change,
});
const host = 'heater.example:8080';

test('the title is the phase on Live, else the screen, and the site', () => {
  const calm = of({ a: heard('a') });
  expect(documentTitle(calm, 'live', host)).toBe('Circulating · Test loop · flatwater');
  expect(documentTitle(calm, 'days', host)).toBe('Days · Test loop · flatwater');
  expect(documentTitle(of({}), 'live', host)).toBe('Live · … · flatwater');
});

test('the title counts, on every screen, the alarms of all sites that nobody has seen', () => {
  const sites = {
    a: heard('a', alarm('unacknowledged'), alarm('acknowledged'), alarm('shelved'), alarm('suppressed')),
    b: heard('b', alarm('returned-unacknowledged')),
  };
  expect(documentTitle(of(sites), 'live', host)).toBe('(2) Circulating · Test loop · flatwater');
  expect(documentTitle(of(sites), 'replay', host)).toBe('(2) Replay · Test loop · flatwater');
});

test('the title tells nothing of a loop to whoever has not signed in', () => {
  const shut = of({ a: heard('a', alarm('unacknowledged')) }, { door: 'shut' });
  expect(documentTitle(shut, 'live', host)).toBe(`Sign in · ${host} · flatwater`);
});
