import { readdirSync } from 'node:fs';
import { readSiteFile } from '../../controller/site-file.ts';
import { countAlarms } from '../support/alarm-count.ts';

const folder = 'sim/scenarios';
const year = 365;

/** What a healthy loop announces in a year, for each site: a JSON line each. */
export async function benchAlarms(): Promise<void> {
  for (const file of readdirSync(folder).filter((name) => name.endsWith('.yaml'))) {
    const read = readSiteFile(`${folder}/${file}`);
    if (!read.ok) throw new Error(`${file} is not a site file`);
    const { announced, total, mostADay, mostAMinute, longestH, longest } = countAlarms(
      read.site,
      Date.parse('2031-01-01T00:00:00Z'),
      year,
    );
    const figures = { announced, total, aDay: Number((total / year).toFixed(3)), mostADay, mostAMinute };
    const stale = { longestH: Number(longestH.toFixed(1)), longest };
    console.log(JSON.stringify({ bench: 'alarms', site: read.site.name, days: year, ...figures, ...stale }));
  }
}
