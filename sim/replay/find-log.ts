import { existsSync, readdirSync } from 'node:fs';
import { logPath } from '../../controller/log/log.ts';

type Found = { readonly ok: true; readonly path: string } | { readonly ok: false; readonly why: string };

/** Finds the log of a site below a data folder; without a name, that of the only site there. */
export function findLog(dataFolder: string, site: string | undefined): Found {
  const sites = sitesIn(dataFolder);
  if (sites.length === 0)
    return { ok: false, why: `there is no log below ${dataFolder}; give --data FOLDER` };
  const named = site ?? (sites.length === 1 ? sites[0] : undefined);
  if (named === undefined) return { ok: false, why: `give one with --site: ${sites.join(', ')}` };
  if (!sites.includes(named))
    return { ok: false, why: `no log of '${named}'; there are: ${sites.join(', ')}` };
  return { ok: true, path: logPath(dataFolder, named) };
}

function sitesIn(dataFolder: string): string[] {
  try {
    const folders = readdirSync(dataFolder, { withFileTypes: true }).filter((entry) => entry.isDirectory());
    return folders.map(({ name }) => name).filter((name) => existsSync(logPath(dataFolder, name)));
  } catch {
    return [];
  }
}
