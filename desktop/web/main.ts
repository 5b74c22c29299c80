import { hostOptions, withMonitorOptions } from '../host/monitor-options.ts';
import { newCommand } from '../host/new-command.ts';
import { parsePort } from './port-option.ts';
import { runWebMonitor } from './run.ts';

const command = withMonitorOptions(
  newCommand(
    'npm run monitor --',
    'The monitor in a browser of this machine, beside controllers that run already.',
  ),
)
  .option('--port <number>', 'port of the page; 0: any free one', parsePort, 8080)
  .option('--host <address>', 'address of the page, one of this machine alone', '127.0.0.1')
  .parse();

const { port, host } = command.opts<{ port: number; host: string }>();
process.exit(await runWebMonitor(hostOptions(command), host, port));
