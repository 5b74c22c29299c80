import type { Settings } from '../../shared-types/settings.ts';
import type { Site } from '../../shared-types/site.ts';
import type { LogWriter } from '../log/log.ts';
import type { Engine } from './engine.ts';
import { resumeFrom } from './resume.ts';
import type { RunStart } from './stepper.ts';

export interface BegunRun extends RunStart {
  readonly settings: Settings;
  readonly settingsRevision: number;
}

/** Takes up where the log ends and begins a run there, all of it or nothing. */
export function beginRun(log: LogWriter, engine: Engine, site: Site, atMs: number): BegunRun {
  const { state, settings, text } = resumeFrom(log, engine, site);
  const { engineVersion } = engine;
  const numbers = { run: 1, siteRevision: 1, settingsRevision: 1 };
  log.batch(() => {
    numbers.run = log.startRun(engineVersion, atMs);
    numbers.siteRevision = log.keepSite(site, atMs);
    numbers.settingsRevision = log.keepSettings(settings, atMs);
    log.saveState({ atMs, run: numbers.run, step: 0, engineVersion, state });
    log.event({ atMs, kind: 'controller-started', text, values: { engineVersion, run: numbers.run } });
  });
  return { ...numbers, state, settings };
}
