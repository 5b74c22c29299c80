import { execFileSync } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { writeFileSync } from 'node:fs';
import { connect } from 'node:net';
import { needProgram } from './find-program.ts';
import { freePort } from './free-port.ts';
import { type Program, startProgram } from './process.ts';
import { temporaryFolder } from './temporary.ts';
import { until } from './wait.ts';

const brokerUsers = ['controller', 'device', 'monitor', 'guest'] as const;
export type BrokerUser = (typeof brokerUsers)[number];

/** Who may do what: only the controller writes outputs, only monitors (and it) ask, guests look. */
const accessRules = `
user controller
topic read flatwater/+/device/+
topic read flatwater/+/request
topic write flatwater/+/device/outputs
topic write flatwater/+/snapshot
topic write flatwater/+/status
topic write flatwater/+/site
topic write flatwater/+/answer

user device
topic read flatwater/+/device/+
topic write flatwater/+/device/readings
topic write flatwater/+/device/feedback
topic write flatwater/+/device/status

user monitor
topic read flatwater/#
topic write flatwater/+/request

user guest
topic read flatwater/#
`;

/** A Mosquitto of its own for a test, on a loopback port, with users and access rules. */
export interface MosquittoBroker {
  readonly port: number;
  readonly url: string;
  username(user: BrokerUser): string;
  password(user: BrokerUser): string;
  /** A file with the user's password in its first line, as site files name it. */
  passwordFile(user: BrokerUser): string;
  log(): string;
  /** Ends it at once, as a power cut would. */
  kill(): Promise<void>;
  /** Starts it again on the same port; what was retained is gone. */
  restart(): Promise<void>;
  /** Ends it for good and removes its files. */
  stop(): Promise<void>;
}

export async function startMosquitto(): Promise<MosquittoBroker> {
  const folder = temporaryFolder('mosquitto');
  const port = await freePort();
  const passwords = Object.fromEntries(
    brokerUsers.map((user) => [user, randomBytes(12).toString('hex')]),
  ) as Record<BrokerUser, string>;
  writeFiles(folder.file, port, passwords);

  let program: Program | undefined;
  const start = async () => {
    const begun = startProgram(needProgram('mosquitto'), ['-c', folder.file('mosquitto.conf')]);
    program = begun;
    await until(`Mosquitto on port ${port}`, () => {
      if (begun.hasEnded()) throw new Error(`Mosquitto did not start:\n${begun.output()}`);
      return answers(port);
    });
  };
  const kill = async () => {
    if (program !== undefined && !program.hasEnded()) await program.stop('SIGKILL');
  };
  await start();
  return {
    port,
    url: `mqtt://127.0.0.1:${port}`,
    username: (user) => user,
    password: (user) => passwords[user],
    passwordFile: (user) => folder.file(`${user}.password`),
    log: () => program?.output() ?? '',
    kill,
    restart: async () => {
      await kill();
      await start();
    },
    stop: async () => {
      await kill();
      folder.remove();
    },
  };
}

function writeFiles(
  file: (name: string) => string,
  port: number,
  passwords: Readonly<Record<BrokerUser, string>>,
): void {
  const mode = 0o600;
  for (const user of brokerUsers) writeFileSync(file(`${user}.password`), `${passwords[user]}\n`, { mode });
  const users = brokerUsers.map((user) => `${user}:${passwords[user]}\n`).join('');
  writeFileSync(file('users'), users, { mode });
  // Hashes the passwords of the file in place, so that none stands on a command line.
  execFileSync(needProgram('mosquitto_passwd'), ['-U', file('users')]);
  writeFileSync(file('access'), accessRules, { mode });
  const settings = [
    `listener ${port} 127.0.0.1`,
    // Started as root it would step down to a user who may not read this folder.
    ...(process.getuid?.() === 0 ? ['user root'] : []),
    'allow_anonymous false',
    `password_file ${file('users')}`,
    `acl_file ${file('access')}`,
    'persistence false',
    'log_dest stderr',
    'log_type all',
  ];
  writeFileSync(file('mosquitto.conf'), `${settings.join('\n')}\n`, { mode });
}

function answers(port: number): Promise<boolean> {
  return new Promise((resolve) => {
    const socket = connect(port, '127.0.0.1');
    socket.once('connect', () => {
      socket.destroy();
      resolve(true);
    });
    socket.once('error', () => resolve(false));
  });
}
