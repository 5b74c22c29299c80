import { once } from 'node:events';
import { hostOptions, withMonitorOptions } from '../host/monitor-options.ts';
import { newCommand } from '../host/new-command.ts';
import { parsePort } from '../web/port-option.ts';
import { runWebMonitor } from '../web/run.ts';
import { openMonitorWindow } from './window.ts';

const command = withMonitorOptions(
  newCommand(
    'npm run desktop --',
    'The monitor in a window, beside controllers that run already; without one, in the browser.',
  ),
)
  .option('--port <number>', 'port of the page where no window can be opened; 0: any free one', parsePort, 0)
  .parse();

const options = hostOptions(command);
const start = await openMonitorWindow(options);
if (start.ok) {
  // The window hears Ctrl-C itself, since it belongs to the same terminal; this waits for its end.
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.on(signal, () => start.window.kill(signal));
  const [code] = (await once(start.window, 'exit')) as [number | null];
  process.exit(code ?? 0);
}
console.log(`No window here: ${start.reason}. The browser serves instead.`);
process.exit(
  await runWebMonitor(options, { host: '127.0.0.1', port: command.opts<{ port: number }>().port }),
);
