import { hostOptions, withMonitorOptions } from '../host/monitor-options.ts';
import { newCommand } from '../host/new-command.ts';
import { parsePort } from './port-option.ts';
import { runWebMonitor } from './run.ts';

interface CommandOptions {
  readonly port: number;
  readonly listen: string;
  readonly tokenFile?: string;
  readonly makeTokenFile?: boolean;
  readonly alsoCalled?: string[];
}

const examples = `
Examples:
  npm run monitor -- --data data
  npm run monitor -- --listen 0.0.0.0 --token-file monitor-tokens --make-token-file
`;

const command = withMonitorOptions(
  newCommand('npm run monitor --', 'The monitor in a browser, beside controllers that run already.'),
)
  .option('--port <number>', 'port of the page; 0: any free one', parsePort, 8080)
  .option('--listen <address>', 'address of the page; any but 127.0.0.1 wants a token file', '127.0.0.1')
  .option('--token-file <file>', 'file of the tokens: one may ask, one may only look')
  .option('--make-token-file', 'make that file, for you alone, where there is none')
  .option(
    '--also-called <name...>',
    'further names under which browsers come, such as that of a proxy; want a token file',
  )
  .addHelpText('after', examples)
  .parse();

const { port, listen, tokenFile, makeTokenFile, alsoCalled = [] } = command.opts<CommandOptions>();
process.exit(
  await runWebMonitor(hostOptions(command), { host: listen, port, tokenFile, makeTokenFile, alsoCalled }),
);
