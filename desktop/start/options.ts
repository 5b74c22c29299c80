import { InvalidArgumentError } from 'commander';
import { newCommand } from '../host/new-command.ts';
import { parsePort } from '../web/port-option.ts';

export interface StartOptions {
  readonly window: boolean;
  readonly port: number;
  /** Seconds of the simulated calendar in a second of the wall. */
  readonly speed: number;
  /** Scenario file to play in place of the demo. */
  readonly scenario: string | undefined;
  /** Data folder. */
  readonly data: string;
  /** Where the simulated calendar begins [UTC ms]; undefined: where the log stopped, else a day in June. */
  readonly from: number | undefined;
}

function parseSpeed(text: string): number {
  const speed = Number(text);
  if (!(speed >= 0.1 && speed <= 600)) throw new InvalidArgumentError('A speed is 0.1 to 600.');
  return speed;
}

function parseInstant(text: string): number {
  const instant = Date.parse(text);
  if (Number.isNaN(instant))
    throw new InvalidArgumentError('An instant is written like 2031-06-21T09:00:00Z.');
  return instant;
}

export function readStartOptions(argv: readonly string[]): StartOptions {
  const command = newCommand(
    'npm start --',
    'A simulated loop, its controller and its monitor, all on this machine.',
  )
    .option('--no-window', 'serve the browser, open no window')
    .option('--port <number>', 'port of the page; 0: any free one', parsePort, 8080)
    .option('--speed <number>', 'seconds of the simulated calendar in a second', parseSpeed, 60)
    .option('--scenario <file>', 'play this scenario in place of the demo, with a log of its own')
    .option('--data <folder>', 'folder of the log', 'data')
    .option(
      '--from <instant>',
      'begin the simulated calendar here, not before the end of the log',
      parseInstant,
    )
    .parse(argv);
  const { window, port, speed, scenario, data, from } = command.opts<StartOptions>();
  return { window, port, speed, scenario, data, from };
}
