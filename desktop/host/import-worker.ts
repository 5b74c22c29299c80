import { parentPort, workerData } from 'node:worker_threads';
import { logPath } from '../../controller/log/log.ts';
import { importedName } from '../../shared-types/foreign-log.ts';
import { readFileHead } from '../../sim/import/file-head.ts';
import { findLoop, newestLoop } from '../../sim/import/find-loop.ts';
import { ImportRefused } from '../../sim/import/import-refused.ts';
import { takeIn } from '../../sim/import/take-in.ts';
import type { ImportAnswers, ImportQuestion, LoopMessage } from './import-messages.ts';
import { isCancelled, setDone, setStage } from './job-flags.ts';

/** The thread that reads a foreign file and keeps its days, so that the monitor's main thread never waits. */
const question = workerData as ImportQuestion;

async function answerTo(asked: ImportQuestion): Promise<ImportAnswers[ImportQuestion['kind']]> {
  switch (asked.kind) {
    case 'head':
      return head(asked);
    case 'loops':
      return asked.names.flatMap((name) => loopOf(logPath(asked.dataFolder, name)) ?? []);
    case 'take-in':
      return take(asked);
  }
}

/** A log that cannot be read must not keep the others from being shown. */
function loopOf(path: string): LoopMessage | undefined {
  try {
    return newestLoop(path);
  } catch {
    return undefined;
  }
}

async function head({
  path,
  form,
}: Extract<ImportQuestion, { kind: 'head' }>): Promise<ImportAnswers['head']> {
  try {
    return { ok: true, head: await readFileHead(path, form) };
  } catch (thrown) {
    if (thrown instanceof ImportRefused) return { ok: false, faults: [thrown.message] };
    throw thrown;
  }
}

async function take(asked: Extract<ImportQuestion, { kind: 'take-in' }>): Promise<ImportAnswers['take-in']> {
  const { path, dataFolder, siteName, flags, ...options } = asked;
  const found =
    asked.loop === null ? findLoop(dataFolder, siteName) : { ok: true as const, loop: asked.loop };
  if (!found.ok) return { outcome: found, imported: null };
  setStage(flags, 'importing');
  const target = logPath(dataFolder, importedName(siteName));
  const goOn = (done: number) => {
    setDone(flags, done);
    return !isCancelled(flags);
  };
  const outcome = await takeIn(path, { ...options, ...found.loop, logPath: target, goOn });
  return { outcome, imported: newestLoop(target) ?? null };
}

void answerTo(question).then((answer) => parentPort?.postMessage(answer));
