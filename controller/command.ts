import { readFileSync } from 'node:fs';
import { Command, InvalidArgumentError } from 'commander';
import type { Site } from '../shared-types/site.ts';
import { anchoredClock, type Clock, parseAnchor, wallClock } from './clock.ts';
import { type Controller, startController } from './daemon/controller.ts';
import { BrokerStartError } from './links/broker-start-error.ts';
import type { BrokerCredentials } from './links/open-link.ts';
import { formatSiteFault, readSiteFile } from './site-file.ts';

/** Exit codes, as `--help` tells them. */
const exitCodes = { stopped: 0, failed: 1, badInput: 2, brokerNotStarted: 3 } as const;

interface Options {
  readonly site: string;
  readonly data: string;
  readonly clock?: Clock;
  readonly brokerPort?: number;
}

const help = `
Examples:
  npm run controller -- --site my-loop.yaml
  npm run controller -- --site my-loop.yaml --data /var/lib/flatwater --broker-port 1883

Exit codes:
  0  stopped by a signal, outputs safe and log closed
  1  an unforeseen failure; outputs were made safe first
  2  wrong options or a wrong site file; nothing was started
  3  the embedded broker could not start; nothing was started
`;

const command = new Command('controller')
  .description('Controls one loop, without a monitor if need be.')
  .requiredOption('--site <file>', 'site file of the loop')
  .option('--data <folder>', 'folder of the logs, made if missing', 'data')
  .option(
    '--clock <anchor>',
    'run by another clock: SHOWS_MS@WALL_MS*SPEED, beside a simulated loop',
    clockOf,
  )
  .option('--broker-port <number>', 'port of the embedded broker, 0 for any free one', portOf)
  .addHelpText('after', help)
  .exitOverride((error) => process.exit(error.exitCode === 0 ? exitCodes.stopped : exitCodes.badInput));

function clockOf(text: string): Clock {
  const anchor = parseAnchor(text);
  if (anchor === undefined) throw new InvalidArgumentError('It is no SHOWS_MS@WALL_MS*SPEED.');
  return anchoredClock(anchor);
}

function portOf(text: string): number {
  if (!/^\d{1,5}$/.test(text) || Number(text) > 65_535)
    throw new InvalidArgumentError('It is no port from 0 to 65535.');
  return Number(text);
}

function refuse(lines: readonly string[]): never {
  for (const line of lines) console.error(line);
  process.exit(exitCodes.badInput);
}

function siteOf({ site: path, brokerPort }: Options): Site {
  const read = readSiteFile(path);
  if (!read.ok) return refuse(read.faults.map(formatSiteFault));
  const { site } = read;
  if (brokerPort === undefined) return site;
  if (site.broker === undefined)
    return refuse([`${path}: --broker-port needs a broker section in the site file`]);
  return { ...site, broker: { ...site.broker, port: brokerPort } };
}

/** Name and password of a section of the site file, or undefined without a name. */
function credentialsOf(site: Site, section: 'publish' | 'broker'): BrokerCredentials | undefined {
  const { username, passwordFile } = site[section] ?? {};
  if (username === undefined) return undefined;
  if (passwordFile === undefined) return { username, password: '' };
  try {
    return { username, password: readFileSync(passwordFile, 'utf8').split(/\r?\n/, 1)[0] ?? '' };
  } catch (thrown) {
    return refuse([`${passwordFile}: the password file of ${section} cannot be read: ${wordsOf(thrown)}`]);
  }
}

/** A name without a password would keep nobody out. */
function clientCredentialsOf(site: Site): BrokerCredentials | undefined {
  const credentials = credentialsOf(site, 'broker');
  if (credentials?.password === '')
    return refuse([`${site.broker?.passwordFile}: the password file of broker has an empty first line`]);
  return credentials;
}

const wordsOf = (thrown: unknown) => (thrown instanceof Error ? thrown.message : String(thrown));

/** Ends the process once, for whichever reason comes first. */
function watchForEnd(starting: Promise<Controller>): void {
  let started: Controller | undefined;
  let ending = false;
  const end = (code: number) => {
    if (ending) return;
    ending = true;
    void starting
      .then((controller) => controller.stop())
      .then(
        () => process.exit(code),
        (thrown) => {
          console.error(`stopping failed: ${wordsOf(thrown)}`);
          process.exit(exitCodes.failed);
        },
      );
  };
  const fail = (thrown: unknown) => {
    console.error(thrown instanceof Error ? (thrown.stack ?? thrown.message) : thrown);
    started?.makeSafe();
    end(exitCodes.failed);
  };
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const)
    process.on(signal, () => end(exitCodes.stopped));
  process.on('uncaughtException', fail);
  process.on('unhandledRejection', fail);
  // The parent that started this is gone or asks for the end.
  process.on('disconnect', () => end(exitCodes.stopped));
  starting.then(
    (controller) => {
      started = controller;
    },
    (thrown) => {
      console.error(wordsOf(thrown));
      process.exit(thrown instanceof BrokerStartError ? exitCodes.brokerNotStarted : exitCodes.failed);
    },
  );
}

async function main(options: Options): Promise<void> {
  const site = siteOf(options);
  const publishCredentials = credentialsOf(site, 'publish');
  const clientCredentials = clientCredentialsOf(site);
  const starting = startController({
    site,
    dataFolder: options.data,
    clock: options.clock ?? wallClock,
    ...(publishCredentials === undefined ? {} : { publishCredentials }),
    ...(clientCredentials === undefined ? {} : { clientCredentials }),
    say: (line) => console.error(line),
  });
  watchForEnd(starting);
  const controller = await starting;
  console.log(`controller ready: broker ${controller.brokerUrl ?? 'none'} site ${site.name}`);
}

await main(command.parse().opts<Options>());
