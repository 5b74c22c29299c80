import { readFileSync } from 'node:fs';
import { Command, InvalidArgumentError } from 'commander';
import { anchoredClock, type Clock, parseAnchor } from '../../controller/clock.ts';
import { brokerUrlSchema } from '../../shared-types/site.ts';
import { scenarioList } from '../scenario/list.ts';
import { type DayKind, dayKinds } from '../weather/day-kinds.ts';
import { type FaultWish, faultList, parseFaultWish } from './fault-text.ts';

export interface DeviceCommand {
  readonly site?: string;
  readonly scenario?: string;
  readonly broker?: string;
  readonly username?: string;
  readonly passwordFile?: string;
  readonly serial?: string;
  /** The clock that was given; without one the scenario's calendar begins now, at this speed. */
  readonly clock?: Clock;
  readonly speed: number;
  readonly seed?: number;
  readonly weather?: readonly DayKind[];
  readonly fault: readonly FaultWish[];
  readonly plantState?: string;
}

interface Flags extends Omit<DeviceCommand, 'speed'> {
  readonly listFaults?: boolean;
  readonly listScenarios?: boolean;
  readonly speed?: number;
}

/** Reads the command line. Ends the process with code 0 after a list or help, 2 after a wrong one. */
export function readDeviceCommand(argv: readonly string[]): DeviceCommand {
  const program = new Command('device')
    .description('A simulated loop behind a broker or a serial port, obeying outputs as a real device does.')
    .option('--site <file>', 'site file of the loop')
    .option(
      '--scenario <file>',
      'scenario: site, weather, state at first, faults; other options go before it',
    )
    .option('--broker <url>', 'broker; otherwise the one that the site file names', brokerOf)
    .option('--username <name>', 'name at the broker')
    .option('--password-file <file>', 'file whose first line is the password at the broker')
    .option('--serial <path>', 'serial port to speak on, in place of a broker')
    .option('--clock <anchor>', 'clock to live by: SHOWS_MS@WALL_MS*SPEED', clockOf)
    .option('--speed <number>', 'seconds simulated in one second, 0.01 to 3600, from now on', speedOf)
    .option('--seed <number>', 'picks weather, noise and errors of sensors; 1 unless said', wholeOf)
    .option('--weather <kinds>', `kinds of day one after another, of ${dayKinds.join(', ')}`, kindsOf)
    .option(
      '--fault <wish>',
      'NAME[:CHANNEL[/OTHER]][@FROM][~UNTIL][=SIZE], as often as wanted',
      wishesOf,
      [],
    )
    .option('--list-faults', 'list the faults and what they do')
    .option('--list-scenarios', 'list the scenarios that come with the program')
    .option('--plant-state <file>', 'where the loop goes on from, and is put away')
    .addHelpText(
      'after',
      `\nFROM and UNTIL are HH:MM or YYYY-MM-DDTHH:MM by the clocks of the site.
Examples:
  npm run device -- --scenario sim/scenarios/days/front-at-noon.yaml --broker mqtt://127.0.0.1:1883 --speed 60
  npm run device -- --site FILE --fault pump-dead@11:30~12:15 --fault sensor-drifting:storeBottomC=2

Exit codes: 0 stopped by a signal, 1 an unforeseen failure, 2 wrong options or files, or an impossible loop.`,
    )
    .exitOverride((error) => process.exit(error.exitCode === 0 ? 0 : 2));
  const flags = program.parse([...argv]).opts<Flags>();
  if (flags.listFaults === true) endWith(faultList());
  if (flags.listScenarios === true) endWith(scenarioList(process.cwd()));
  const { listFaults: _, listScenarios: __, speed, ...others } = flags;
  if (others.site === undefined && others.scenario === undefined)
    return program.error('error: --site FILE or --scenario FILE is needed');
  if (others.serial !== undefined && others.broker !== undefined)
    return program.error('error: --serial and --broker exclude each other');
  if (others.clock !== undefined && speed !== undefined)
    return program.error('error: --clock carries its own speed; --speed cannot be given as well');
  return { ...others, speed: speed ?? 1 };
}

function endWith(lines: readonly string[]): never {
  console.log(lines.join('\n'));
  process.exit(0);
}

/** @returns undefined when there is no file to read. @throws when it cannot be read. */
export function readPassword(file: string | undefined): string | undefined {
  return file === undefined ? undefined : (readFileSync(file, 'utf8').split(/\r?\n/)[0] ?? '');
}

function brokerOf(text: string): string {
  const url = brokerUrlSchema.safeParse(text);
  if (!url.success) throw new InvalidArgumentError('A broker address is like mqtt://127.0.0.1:1883.');
  return url.data;
}

function clockOf(text: string): Clock {
  const anchor = parseAnchor(text);
  if (anchor === undefined) throw new InvalidArgumentError('The form is SHOWS_MS@WALL_MS*SPEED.');
  return anchoredClock(anchor);
}

function speedOf(text: string): number {
  const speed = Number(text);
  if (!(speed >= 0.01 && speed <= 3600)) throw new InvalidArgumentError('A number from 0.01 to 3600.');
  return speed;
}

function wholeOf(text: string): number {
  if (!/^\d{1,9}$/.test(text)) throw new InvalidArgumentError('A whole number from 0 to 999999999.');
  return Number(text);
}

function kindsOf(text: string): DayKind[] {
  return text.split(',').map((word) => {
    const kind = dayKinds.find((known) => known === word.trim());
    if (kind === undefined) throw new InvalidArgumentError(`No kind of day is called '${word}'.`);
    return kind;
  });
}

function wishesOf(text: string, before: readonly FaultWish[]): FaultWish[] {
  const wish = parseFaultWish(text);
  if (!wish.ok) throw new InvalidArgumentError(`${wish.why}.`);
  return [...before, wish.value];
}
