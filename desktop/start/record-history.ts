import { formatSiteFault, readSiteFile } from '../../controller/site-file.ts';
import { wordsOf } from '../host/replies.ts';
import { recordFirstDays } from './first-days.ts';
import { demoSiteFile } from './places.ts';

/** Records the days before a first start, as a process of its own: `record-history.ts FOLDER UNTIL_MS`. */
const [dataFolder = '', untilMs = ''] = process.argv.slice(2);
const read = readSiteFile(demoSiteFile);
try {
  if (!read.ok) throw new TypeError(read.faults.map(formatSiteFault).join('; '));
  recordFirstDays(read.site, dataFolder, Number(untilMs));
  console.log('done');
} catch (thrown) {
  console.error(wordsOf(thrown));
  process.exitCode = 1;
}
