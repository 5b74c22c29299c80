import type { LogRecord } from '../../shared-types/log.ts';
import { defaultSettings, type Settings, settingsSchema } from '../../shared-types/settings.ts';
import type { Site } from '../../shared-types/site.ts';
import type { LogWriter, Resume } from '../log/log.ts';
import type { Engine, EngineState } from './engine.ts';

export interface Resumed {
  readonly state: EngineState;
  readonly settings: Settings;
  /** How the state was come by, for the log and the screen. */
  readonly text: string;
}

/**
 * Takes up where the log ends: the newest saved state, and the steps logged after it run once more.
 *
 * Whatever is missing or no longer understood, there is a state to go on with: the engine's first one,
 * which assumes the worst.
 */
export function resumeFrom(log: LogWriter, engine: Engine, site: Site): Resumed {
  const resume = log.resume();
  const settings = resume.settings ?? firstSettings(site);
  if (resume.saved === null)
    return { state: engine.initialState(), settings, text: 'Nothing was there to continue from.' };
  const revived = engine.reviveState(resume.saved.state);
  if (revived === undefined)
    return {
      state: engine.initialState(),
      settings,
      text: 'The saved state is of another version: totals begin anew.',
    };
  return { settings, ...runAgain(revived, resume, log, engine, { site, settings }) };
}

/** Setpoints of a first start: the defaults, and what the site file says otherwise. */
function firstSettings(site: Site): Settings {
  return settingsSchema.parse({ ...defaultSettings, ...site.settings });
}

interface Circumstances {
  readonly site: Site;
  readonly settings: Settings;
}

function runAgain(
  revived: EngineState,
  { after }: Resume,
  log: LogWriter,
  engine: Engine,
  now: Circumstances,
): { state: EngineState; text: string } {
  const then = circumstancesOf(log, now);
  let state = revived;
  try {
    for (const record of after) {
      const { site, settings } = then(record);
      state = engine.step(state, record.input, site, settings).state;
    }
  } catch (thrown) {
    return { state: revived, text: `The steps after the saved state could not be run again: ${thrown}` };
  }
  return { state, text: `Continued from the saved state and ${after.length} logged steps.` };
}

/** Site and settings that were in force at a step; each revision is read once. */
function circumstancesOf(log: LogWriter, now: Circumstances): (record: LogRecord) => Circumstances {
  const known = new Map<string, Circumstances>();
  return ({ siteRevision, settingsRevision }) => {
    const key = `${siteRevision} ${settingsRevision}`;
    const found = known.get(key) ?? {
      site: log.site(siteRevision) ?? now.site,
      settings: log.settings(settingsRevision) ?? now.settings,
    };
    known.set(key, found);
    return found;
  };
}
