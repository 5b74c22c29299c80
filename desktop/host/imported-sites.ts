import { existsSync, readdirSync } from 'node:fs';
import { logPath } from '../../controller/log/log.ts';
import { isImportedName } from '../../shared-types/foreign-log.ts';
import { messageSchemaVersion } from '../../shared-types/messages.ts';
import type { AskImporter, LoopMessage } from './import-messages.ts';
import type { Live } from './live.ts';

/** The sites that have days of another logger. No controller speaks of them, so they are told here. */
export interface ImportedSites {
  /** Settles once all of them are told. */
  known(): Promise<void>;
  tell(loop: LoopMessage): void;
}

export function createImportedSites(live: Live, dataFolder: string, ask: AskImporter): ImportedSites {
  const told = new Set<string>();
  let telling: Promise<void> | undefined;

  function tell({ site, settings }: LoopMessage): void {
    told.add(site.name);
    const revisions = { siteRevision: 1, settingsRevision: 1 };
    live.takeImported({ schema: messageSchemaVersion, site, settings, ...revisions });
  }

  /** The command takes days in as well: a site that it made since is told the next time somebody asks. */
  async function tellNew(): Promise<void> {
    const names = importedNames(dataFolder).filter((name) => !told.has(name));
    if (names.length > 0) for (const loop of await ask({ kind: 'loops', dataFolder, names })) tell(loop);
  }

  return {
    tell,
    known() {
      // What cannot be read now is asked for again with the next question.
      telling ??= tellNew()
        .catch(() => undefined)
        .finally(() => {
          telling = undefined;
        });
      return telling;
    },
  };
}

function importedNames(dataFolder: string): string[] {
  if (!existsSync(dataFolder)) return [];
  return readdirSync(dataFolder).filter(
    (name) => isImportedName(name) && existsSync(logPath(dataFolder, name)),
  );
}
