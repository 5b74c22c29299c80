import { existsSync, readdirSync } from 'node:fs';
import { logPath } from '../../controller/log/log.ts';
import {
  type ImportState,
  importedName,
  type importMethods,
  isImportedName,
} from '../../shared-types/foreign-log.ts';
import { messageSchemaVersion } from '../../shared-types/messages.ts';
import { ImportRefused } from '../../sim/import/import-refused.ts';
import { forgetMap, keepMap, mapsFile, readKeptMaps } from '../../sim/import/kept-maps.ts';
import type { Handlers } from './handlers.ts';
import type { CheckedParams } from './history-messages.ts';
import type { LoopMessage } from './import-messages.ts';
import { createImportWorkers } from './import-workers.ts';
import type { JobBoard } from './job-board.ts';
import type { Live } from './live.ts';
import { refusal, wordsOf } from './replies.ts';
import { createUploads } from './uploads.ts';

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

/** Outcomes that are remembered until somebody asks for them. A design choice. */
const mostOutcomes = 20;

export function createImportDesk({ live, dataFolder, worker }: DeskParts): ImportDesk {
  const uploads = createUploads();
  const outcomes = new Map<string, ImportState>();
  const { ask, close: endWorkers } = createImportWorkers(worker);
  let telling: Promise<void> | undefined;

  function tell({ site, settings }: LoopMessage): void {
    const revisions = { siteRevision: 1, settingsRevision: 1 };
    live.takeImported({ schema: messageSchemaVersion, site, settings, ...revisions });
  }

  async function tellKnown(): Promise<void> {
    const names = importedNames(dataFolder);
    if (names.length > 0) for (const loop of await ask({ kind: 'loops', dataFolder, names })) tell(loop);
  }

  function remember(job: string, state: ImportState): void {
    const [oldest] = outcomes.keys();
    if (outcomes.size >= mostOutcomes && oldest !== undefined) outcomes.delete(oldest);
    outcomes.set(job, state);
  }

  function begin(jobs: JobBoard, params: CheckedParams<'importDays'>): 'begun' | string {
    const { site, upload, job, map, clash, write } = params;
    const path = uploads.path(upload);
    if (path === undefined) return notThere;
    const told = live.site(site)?.site;
    const loop = told === undefined || told === null ? null : { site: told.site, settings: told.settings };
    const running = jobs.run(job, async (flags) => {
      const asked = { kind: 'take-in' as const, siteName: site, path, dataFolder, loop, flags };
      const { outcome, imported } = await ask({ ...asked, map, clash, write });
      if (imported !== null) tell(imported);
      remember(
        job,
        outcome.ok
          ? { state: 'done', site: importedName(site), report: outcome.report }
          : { state: 'refused', faults: [...outcome.faults] },
      );
    });
    running?.catch((thrown: unknown) => remember(job, { state: 'refused', faults: [wordsOf(thrown)] }));
    return running === undefined ? 'A job of this name runs already.' : 'begun';
  }

  return {
    known() {
      // A log that cannot be read must not keep the others from being shown.
      telling ??= tellKnown().catch(() => undefined);
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
      async importDays(params) {
        const begun = begin(jobs, params);
        return begun === 'begun' ? { ok: true, result: begun } : refusal('error', begun);
      },
      async importState({ job }) {
        const progress = jobs.progress(job);
        const running: ImportState =
          progress === null ? null : { state: 'running', doneFraction: progress.doneFraction };
        return { ok: true, result: outcomes.get(job) ?? running };
      },
      columnMaps: async () => maps(() => readKeptMaps(mapsFile(dataFolder))),
      keepColumnMap: async ({ name, map }) => maps(() => keepMap(mapsFile(dataFolder), name, map)),
      forgetColumnMap: async ({ name }) => maps(() => forgetMap(mapsFile(dataFolder), name)),
    }),
    async close() {
      await endWorkers();
      await uploads.close();
    },
  };
}

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
