import { existsSync, readdirSync } from 'node:fs';
import { logPath } from '../../controller/log/log.ts';
import { importedName, type importMethods, isImportedName } from '../../shared-types/foreign-log.ts';
import { messageSchemaVersion } from '../../shared-types/messages.ts';
import type { MonitorReply } from '../../shared-types/monitor-api.ts';
import { ImportRefused } from '../../sim/import/import-refused.ts';
import { forgetMap, keepMap, mapsFile, readKeptMaps } from '../../sim/import/kept-maps.ts';
import type { Handlers } from './handlers.ts';
import type { CheckedParams } from './history-messages.ts';
import type { ImportAnswers, ImportQuestion, LoopMessage } from './import-messages.ts';
import type { JobBoard } from './job-board.ts';
import { isCancelled, type JobFlags } from './job-flags.ts';
import type { Live } from './live.ts';
import { refusal, wordsOf } from './replies.ts';
import { createThreads } from './threads.ts';
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
  const told = new Set<string>();
  let telling: Promise<void> | undefined;

  function ask<Kind extends ImportQuestion['kind']>(question: Extract<ImportQuestion, { kind: Kind }>) {
    return threads.ask<ImportAnswers[Kind]>(question);
  }

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

  async function takeIn(
    { site, upload, map, clash, write }: CheckedParams<'importDays'>,
    flags: JobFlags,
  ): Promise<MonitorReply<'importDays'>> {
    const path = uploads.path(upload);
    if (path === undefined) return refusal('error', notThere);
    const heard = live.site(site)?.site ?? null;
    const loop = heard === null ? null : { site: heard.site, settings: heard.settings };
    const asked = { kind: 'take-in' as const, siteName: site, path, dataFolder, loop, flags };
    const { outcome, imported } = await ask({ ...asked, map, clash, write });
    if (imported !== null) tell(imported);
    if (outcome.ok) return { ok: true, result: { site: importedName(site), report: outcome.report } };
    return isCancelled(flags) ? wasGivenUp : nothingTaken(outcome.faults.join('; '));
  }

  return {
    known() {
      // What cannot be read now is asked for again with the next question.
      telling ??= tellNew()
        .catch(() => undefined)
        .finally(() => {
          telling = undefined;
        });
      return telling;
    },
    handlersOn: (jobs) => ({
      async beginUpload({ bytes }) {
        const upload = await uploads.begin(bytes);
        return { ok: true, result: { upload } };
      },
      async uploadPiece({ upload, at, base64 }) {
        const received = await uploads.add(upload, at, Buffer.from(base64, 'base64'));
        if (typeof received === 'number') return { ok: true, result: { received } };
        return refusal('error', `The file was not taken: ${received}.`);
      },
      dropUpload: async ({ upload }) => ({ ok: true, result: await uploads.drop(upload) }),
      async uploadHead({ upload, form }) {
        const path = uploads.path(upload);
        if (path === undefined) return refusal('error', notThere);
        const answer = await ask({ kind: 'head', path, form });
        return answer.ok ? { ok: true, result: answer.head } : refusal('error', answer.faults.join('; '));
      },
      importDays: (params) =>
        jobs.run(params.job, (flags) =>
          takeIn(params, flags).catch((thrown: unknown) => nothingTaken(wordsOf(thrown))),
        ),
      columnMaps: async () => maps(() => readKeptMaps(mapsFile(dataFolder))),
      keepColumnMap: async ({ name, map }) => maps(() => keepMap(mapsFile(dataFolder), name, map)),
      forgetColumnMap: async ({ name }) => maps(() => forgetMap(mapsFile(dataFolder), name)),
    }),
    async close() {
      await threads.close();
      await uploads.close();
    },
  };
}

const nothingTaken = (why: string) => refusal('error', `Nothing was taken: ${why}.`);
const notThere = 'The file is not here any more, or not wholly. Choose it again.';

function maps(answer: () => ReturnType<typeof readKeptMaps>) {
  try {
    return { ok: true as const, result: [...answer()] };
  } catch (thrown) {
    if (thrown instanceof ImportRefused) return refusal('error', thrown.message);
    return refusal('error', `The maps of columns cannot be kept here: ${wordsOf(thrown)}.`);
  }
}

function importedNames(dataFolder: string): string[] {
  if (!existsSync(dataFolder)) return [];
  return readdirSync(dataFolder).filter(
    (name) => isImportedName(name) && existsSync(logPath(dataFolder, name)),
  );
}
