import type { LogReader } from '../../controller/log/log.ts';
import type { LogRecord } from '../../shared-types/log.ts';
import type { Settings } from '../../shared-types/settings.ts';
import type { Site } from '../../shared-types/site.ts';

/** Site and settings that were in force at a record. */
interface Rule {
  readonly site: Site;
  readonly settings: Settings;
}

export interface Rules {
  /** @returns undefined when the log no longer has them. */
  of(record: Pick<LogRecord, 'siteRevision' | 'settingsRevision'>): Rule | undefined;
}

/** Reads every revision once. */
export function rulesOf(reader: Pick<LogReader, 'site' | 'settings'>): Rules {
  const found = new Map<string, Rule | undefined>();
  return {
    of: ({ siteRevision, settingsRevision }) => {
      const key = `${siteRevision}/${settingsRevision}`;
      if (!found.has(key)) {
        const site = reader.site(siteRevision);
        const settings = reader.settings(settingsRevision);
        found.set(key, site === null || settings === null ? undefined : { site, settings });
      }
      return found.get(key);
    },
  };
}
