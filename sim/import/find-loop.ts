import { existsSync, readdirSync } from 'node:fs';
import { logPath } from '../../controller/log/log.ts';
import { openLogReader } from '../../controller/log/reader.ts';
import { formatSiteFault, readSiteFile } from '../../controller/site-file.ts';
import { importedName, isImportedName } from '../../shared-types/foreign-log.ts';
import { defaultSettings, type Settings, settingsSchema } from '../../shared-types/settings.ts';
import { type Site, siteSchema } from '../../shared-types/site.ts';

/** The loop that a foreign file tells of. */
interface Loop {
  readonly site: Site;
  readonly settings: Settings;
}

export type LoopFound =
  | { readonly ok: true; readonly loop: Loop }
  | { readonly ok: false; readonly faults: readonly string[] };

/**
 * Finds the loop by its site file, or by its name below the data folder: as its controller logged it last, else
 * as it stood when days were imported before. Without either, the only loop there.
 */
export function findLoop(dataFolder: string, wanted: string | undefined): LoopFound {
  if (wanted !== undefined && existsSync(wanted)) return loopOfFile(wanted);
  const names = loopsIn(dataFolder);
  const name = wanted ?? (names.length === 1 ? names[0] : undefined);
  if (name === undefined)
    return none(
      `give a site file or a name with --site; below ${dataFolder} there are: ${names.join(', ') || 'none'}`,
    );
  if (!siteSchema.shape.name.safeParse(name).success)
    return none(`no site file and no site is called '${name}'`);
  const loop = newestLoop(logPath(dataFolder, name)) ?? newestLoop(logPath(dataFolder, importedName(name)));
  return loop === undefined
    ? none(`no log below ${dataFolder} tells of a loop called '${name}'; give its site file`)
    : { ok: true, loop };
}

const none = (fault: string): LoopFound => ({ ok: false, faults: [fault] });

function loopOfFile(path: string): LoopFound {
  const read = readSiteFile(path);
  if (!read.ok) return { ok: false, faults: read.faults.map(formatSiteFault) };
  const { site } = read;
  return {
    ok: true,
    loop: { site, settings: settingsSchema.parse({ ...defaultSettings, ...site.settings }) },
  };
}

function loopsIn(dataFolder: string): string[] {
  if (!existsSync(dataFolder)) return [];
  return readdirSync(dataFolder).filter(
    (name) => !isImportedName(name) && existsSync(logPath(dataFolder, name)),
  );
}

/** Site and settings of the newest logged step; undefined: there is none. */
export function newestLoop(path: string): Loop | undefined {
  if (!existsSync(path)) return undefined;
  const reader = openLogReader(path);
  try {
    const day = reader.days().at(-1)?.day ?? '';
    for (const { siteRevision, settingsRevision } of reader.records(day)) {
      const site = reader.site(siteRevision);
      const settings = reader.settings(settingsRevision);
      return site === null || settings === null ? undefined : { site, settings };
    }
    return undefined;
  } finally {
    reader.close();
  }
}
