import { importedName, type importMethods } from '../../shared-types/foreign-log.ts';
import type { MonitorReply } from '../../shared-types/monitor-api.ts';
import type { Handlers } from './handlers.ts';
import type { CheckedParams } from './history-messages.ts';
import type { AskImporter, LoopMessage } from './import-messages.ts';
import { createImportedSites } from './imported-sites.ts';
import type { JobBoard } from './job-board.ts';
import { isCancelled, type JobFlags } from './job-flags.ts';
import type { Live } from './live.ts';
import { mapHandlers } from './map-handlers.ts';
import { refusal, wordsOf } from './replies.ts';
import { createThreads } from './threads.ts';
import { uploadGone, uploadHandlers } from './upload-handlers.ts';
import { createUploads } from './uploads.ts';
import { wasGivenUp } from './was-given-up.ts';

/** Takes days of another logger in, and knows the sites that have such days. */
export interface ImportDesk {
  /** Settles once the sites of imported days are told. */
  known(): Promise<void>;
  handlersOn(jobs: JobBoard): Pick<Handlers, keyof typeof importMethods>;
  close(): Promise<void>;
}

interface DeskParts {
  readonly live: Live;
  readonly dataFolder: string;
  /** The worker's module: source beside this file, or a bundle. */
  readonly worker: URL;
}

export function createImportDesk({ live, dataFolder, worker }: DeskParts): ImportDesk {
  const uploads = createUploads();
  const threads = createThreads(worker);
  const ask: AskImporter = (question) => threads.ask(question);
  const sites = createImportedSites(live, dataFolder, ask);

  async function takeIn(
    { site, upload, map, clash, write }: CheckedParams<'importDays'>,
    flags: JobFlags,
  ): Promise<MonitorReply<'importDays'>> {
    const path = uploads.path(upload);
    if (path === undefined) return uploadGone;
    const asked = { kind: 'take-in' as const, siteName: site, path, dataFolder, loop: loopOf(live, site) };
    const { outcome, imported } = await ask({ ...asked, map, clash, write, flags });
    if (imported !== null) sites.tell(imported);
    if (outcome.ok) return { ok: true, result: { site: importedName(site), report: outcome.report } };
    return isCancelled(flags) ? wasGivenUp : nothingTaken(outcome.faults.join('; '));
  }

  return {
    known: sites.known,
    handlersOn: (jobs) => ({
      ...uploadHandlers(uploads, ask),
      ...mapHandlers(dataFolder),
      importDays: (params) =>
        jobs.run(params.job, (flags) =>
          takeIn(params, flags).catch((thrown: unknown) => nothingTaken(wordsOf(thrown))),
        ),
    }),
    async close() {
      await threads.close();
      await uploads.close();
    },
  };
}

/** Site and settings as the site's controller told them; null when it was not heard. */
function loopOf(live: Live, name: string): LoopMessage | null {
  const heard = live.site(name)?.site ?? null;
  return heard === null ? null : { site: heard.site, settings: heard.settings };
}

const nothingTaken = (why: string) => refusal('error', `Nothing was taken: ${why}.`);
