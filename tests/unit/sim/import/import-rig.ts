import { writeFileSync } from 'node:fs';
import { logPath } from '../../../../controller/log/log.ts';
import { openLogReader } from '../../../../controller/log/reader.ts';
import { importedName, importMapSchema } from '../../../../shared-types/foreign-log.ts';
import type { LogRecord } from '../../../../shared-types/log.ts';
import { defaultSettings, settingsSchema } from '../../../../shared-types/settings.ts';
import { type TakeInOptions, takeIn } from '../../../../sim/import/take-in.ts';
import { demoContent, siteOf } from '../../../support/sites.ts';
import { temporaryFolder } from '../../../support/temporary.ts';

export const roof = { column: 'Roof', channel: 'panOutletC', unit: 'C' };
export const pump = { column: 'Pump', unit: 'on-off' };
/** The least that a map has: a time, a temperature and the pump. */
export const leastMap = { time: { column: 'Time' }, values: [roof], pump };

export const lines = (...rows: string[]) => `${rows.join('\r\n')}\r\n`;

/** Takes files in, each test into a folder of its own. */
export function importRig(zone = 'Etc/UTC') {
  const folder = temporaryFolder('import');
  const site = siteOf(demoContent({ timeZone: zone }));
  const path = logPath(folder.path, importedName(site.name));
  return {
    folder,
    site,
    path,
    async takeIn(
      content: string | Uint8Array,
      map: unknown = leastMap,
      changes: Partial<TakeInOptions> = {},
    ) {
      const file = folder.file('foreign.csv');
      writeFileSync(file, content);
      const outcome = await takeIn(file, {
        map: importMapSchema.parse(map),
        site,
        settings: settingsSchema.parse({ ...defaultSettings, ...site.settings }),
        logPath: path,
        write: true,
        ...changes,
      });
      return outcome.ok
        ? { report: outcome.report, faults: [] }
        : { report: undefined, faults: outcome.faults };
    },
    /** Opens the log of imported days for as long as the question takes. */
    read<Answer>(question: (reader: ReturnType<typeof openLogReader>) => Answer): Answer {
      const reader = openLogReader(path);
      try {
        return question(reader);
      } finally {
        reader.close();
      }
    },
    records(): LogRecord[] {
      return this.read((reader) => reader.days().flatMap(({ day }) => [...reader.records(day)]));
    },
  };
}
