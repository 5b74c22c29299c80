import { openLogWriter } from '../../controller/log/writer.ts';
import { logRecord } from './log-records.ts';

/**
 * A process that writes a log until it is ended: `log-filler.ts PATH`. It prints the number of each step
 * once the step is kept, and the log's remark when it can no longer be written.
 */
const [path = ''] = process.argv.slice(2);
const writer = openLogWriter(path);
const run = writer.startRun('engine 1', 0);
for (let step = 1; writer.writable; step++) {
  writer.append(logRecord(step, { run }));
  if (step % 50 === 0) writer.saveState({ atMs: 0, run, step, engineVersion: 'engine 1', state: { step } });
  if (writer.writable) process.stdout.write(`${step}\n`);
}
process.stdout.write(`${writer.remark}\n`);
