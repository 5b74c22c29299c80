import type { LogReader } from '../../controller/log/log.ts';
import type { LogRecord } from '../../shared-types/log.ts';
import type { Settings } from '../../shared-types/settings.ts';
import type { Site } from '../../shared-types/site.ts';

/** Site and settings that were in force at a record. */
export interface Rule {
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
  let newest: { site: number; settings: number; rule: Rule | undefined } | undefined;
  return {
    of: ({ siteRevision, settingsRevision }) => {
      // Nearly every record asks for the same as the one before.
      if (newest?.site === siteRevision && newest.settings === settingsRevision) return newest.rule;
      const key = `${siteRevision}/${settingsRevision}`;
      if (!found.has(key)) {
        const site = reader.site(siteRevision);
        const settings = reader.settings(settingsRevision);
        found.set(key, site === null || settings === null ? undefined : { site, settings });
      }
      const rule = found.get(key);
      newest = { site: siteRevision, settings: settingsRevision, rule };
      return rule;
    },
  };
}
