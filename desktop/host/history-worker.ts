import { existsSync } from 'node:fs';
import { parentPort, workerData } from 'node:worker_threads';
import { logPath } from '../../controller/log/log.ts';
import { noLog } from './checked-reply.ts';
import type { HistoryAnswer, HistoryQuestion } from './history-messages.ts';
import { answerQuestion } from './history-questions.ts';
import { refusal, wordsOf } from './replies.ts';

/**
 * The thread that reads logs and replays days, so that the monitor's main thread never waits for a
 * disk. The database library is imported here alone, and only when a question needs it: a host that
 * was built without it still shows live values.
 */
const { dataFolder } = workerData as { readonly dataFolder: string };

const loadRooms = async () => {
  const [{ openLogReader }, { replayDay }, { whatIf }, { allowedHeat }, kept] = await Promise.all([
    import('../../controller/log/reader.ts'),
    import('../../sim/replay/replay-day.ts'),
    import('../../sim/replay/what-if.ts'),
    import('../../sim/allowance/allowed-heat.ts'),
    import('./kept-fit.ts'),
  ]);
  const keptFit = (site: string) => kept.keptFit(logPath(dataFolder, site), site);
  return { openLogReader, replays: { replayDay, whatIf, allowedHeat, keptFit } };
};
let rooms: ReturnType<typeof loadRooms> | undefined;

async function answer({ id, method, params, flags }: HistoryQuestion): Promise<HistoryAnswer> {
  const { site } = params;
  const path = logPath(dataFolder, site);
  if (!existsSync(path)) return { id, site, reply: noLog(site), remarks: [] };
  try {
    rooms ??= loadRooms();
    const { openLogReader, replays } = await rooms;
    // Opened for each question: a log may be moved, replaced or begun while the monitor runs.
    const reader = openLogReader(path);
    try {
      const reply = answerQuestion(reader, method, params, replays, flags);
      return { id, site, reply, remarks: [...reader.remarks] };
    } finally {
      reader.close();
    }
  } catch (thrown) {
    const reply = refusal('error', `The log of ${site} cannot be opened here: ${wordsOf(thrown)}.`);
    return { id, site, reply, remarks: [] };
  }
}

parentPort?.on('message', (question: HistoryQuestion) => {
  void answer(question).then((message) => parentPort?.postMessage(message));
});
