import type { Command } from 'commander';
import type { HostOptions } from './host.ts';

interface MonitorOptions {
  readonly broker: string;
  readonly username?: string;
  readonly passwordFile?: string;
  readonly data: string;
}

/** The options of every command that starts a monitor. */
export function withMonitorOptions(command: Command): Command {
  return command
    .option('--broker <url>', 'broker that the controllers publish to', 'mqtt://127.0.0.1:1883')
    .option('--username <name>', 'name at the broker')
    .option('--password-file <file>', 'file whose first line is the password at the broker')
    .option('--data <folder>', "folder of the controllers' logs", 'data');
}

/** What those options ask of the host. */
export function hostOptions(command: Command): HostOptions {
  const { broker, username, passwordFile, data } = command.opts<MonitorOptions>();
  return { brokerUrl: broker, username, passwordFile, dataFolder: data };
}

/** The same options again, for a command line of another process. */
export function monitorArguments({ brokerUrl, username, passwordFile, dataFolder }: HostOptions): string[] {
  return [
    ...['--broker', brokerUrl, '--data', dataFolder],
    ...(username === undefined ? [] : ['--username', username]),
    ...(passwordFile === undefined ? [] : ['--password-file', passwordFile]),
  ];
}
