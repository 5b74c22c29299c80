import { expect, test } from 'vitest';
import { siteLabels } from '../../../desktop/ui/shell/site-labels.ts';
import { emptyLive } from '../../../desktop/ui/store/live-store.ts';
import type { Alarm } from '../../../shared-types/alarms.ts';
import { testSiteMessage } from '../../support/fake-monitor/site.ts';
import { testLive, testSnapshot } from '../../support/fake-monitor/snapshot.ts';
import { frostAlarm as frost } from '../../support/samples.ts';

const heard = (name: string, title: string, alarms: Alarm[] = []) => ({
  live: testLive({ name, site: testSiteMessage(title), snapshot: testSnapshot({ alarms }) }),
  heardAtMs: 0,
});
const sites = {
  north: heard('north', 'Roof'),
  south: heard('south', 'Roof', [frost]),
  west: heard('west', 'West wing'),
  east: { live: testLive({ name: 'east', site: null, snapshot: null }), heardAtMs: 0 },
};

test('sites are called by their titles, by their names too where titles are alike, and say what needs somebody', () => {
  expect(siteLabels({ ...emptyLive, sites }, ['north', 'south', 'west', 'east', 'gone'])).toEqual([
    'Roof (north)',
    'Roof (south): 1 alarm',
    'West wing',
    'east',
    'gone: not heard',
  ]);
});

test('an alarm that a person put aside is not counted', () => {
  const put = { ...emptyLive, sites: { south: heard('south', 'Roof', [{ ...frost, state: 'shelved' }]) } };
  expect(siteLabels(put, ['south'])).toEqual(['Roof']);
});
