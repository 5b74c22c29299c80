import { describe, expect, it } from 'vitest';
import { readSiteFile } from '../../../../controller/site-file.ts';
import { countAlarms } from '../../../support/alarm-count.ts';

const sites = [
  'brackle-ness-hatchery',
  'fennick-holm-nursery',
  'marrow-skerry-bakehouse',
  'quillhaven-wash-house',
  'tern-reef-showers',
];
const days = 3;

/**
 * Goals for a loop in one household: one alarm a day on average, none that chatters (three in a minute), none
 * that stands for over a day; design choices after the rates of IEC 62682, from memory. Here on some days of
 * each season; the bench named alarms counts a year.
 */
describe('a healthy loop', () => {
  it.each(sites)('%s has hardly an alarm in any season', (name) => {
    const read = readSiteFile(`sim/scenarios/${name}.yaml`);
    if (!read.ok) throw new Error(`${name} is no site`);
    const counts = [0, 3, 6, 9].map((month) => countAlarms(read.site, Date.UTC(2031, month, 12), days));
    for (const { total, mostAMinute, announced, longest } of counts) {
      expect(total, JSON.stringify(announced)).toBeLessThanOrEqual(days);
      expect(mostAMinute).toBeLessThan(3);
      // Water that nobody can let out but a person stays a danger until somebody does.
      if (longest !== 'frost-season-near') continue;
      expect(read.site.drain).toBe('none');
    }
    const stale = counts.filter(({ longest, longestH }) => longest !== 'frost-season-near' && longestH > 24);
    expect(stale).toEqual([]);
  });
});
