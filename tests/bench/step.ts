import { type EngineState, initialState, step, stepOn } from '../../controller/engine/index.ts';
import { logPath } from '../../controller/log/log.ts';
import { openLogReader } from '../../controller/log/reader.ts';
import { readSiteFile } from '../../controller/site-file.ts';
import type { LogRecord } from '../../shared-types/log.ts';
import { defaultSettings, settingsSchema } from '../../shared-types/settings.ts';
import { recordHistory } from '../../sim/history.ts';
import { temporaryFolder } from '../support/temporary.ts';
import { report, timeMs } from './figure.ts';

const demoSite = 'sim/scenarios/quillhaven-wash-house.yaml';
const day = '2031-06-21';
const repeats = 7;

/** The engine over a recorded day, beside the time that reading this day from SQLite takes. */
export async function benchStep(): Promise<void> {
  const folder = temporaryFolder('bench');
  try {
    const read = readSiteFile(demoSite);
    if (!read.ok) throw new Error(`${demoSite} is not a site file`);
    const { site } = read;
    recordHistory({
      site,
      dataFolder: folder.path,
      fromMs: Date.parse('2031-06-20T22:00:00Z'),
      toMs: Date.parse('2031-06-22T02:00:00Z'),
      seed: 1,
    });
    const reader = openLogReader(logPath(folder.path, site.name));
    const settings = settingsSchema.parse({ ...defaultSettings, ...site.settings });
    let records: LogRecord[] = [];
    const readingMs = timeMs(repeats, () => {
      records = [...reader.records(day)];
    });
    const steppingMs = timeMs(repeats, () => {
      let state: EngineState = initialState();
      for (const record of records) ({ state } = step(state, record.input, site, settings));
    });
    const onwardMs = timeMs(repeats, () => {
      let state: EngineState = initialState();
      for (const record of records) ({ state } = stepOn(state, record.input, site, settings));
    });
    reader.close();
    const nsPerStep = (ms: number) => (ms * 1e6) / records.length;
    report({ bench: 'step', figure: 'engine.step', value: nsPerStep(steppingMs), unit: 'ns' });
    report({
      bench: 'step',
      figure: 'engine.stepOn, as replays and simulations take it',
      value: nsPerStep(onwardMs),
      unit: 'ns',
    });
    report({ bench: 'step', figure: 'engine.step over reading', value: steppingMs / readingMs, unit: '1' });
  } finally {
    folder.remove();
  }
}
