import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { findProgram } from './support/find-program.ts';

/** What a machine has, as far as the tests care. */
export interface Machine {
  hasProgram(name: string): boolean;
  hasFile(path: string): boolean;
  /** Browser that CHROME_PATH names, if it does. */
  readonly chromePath: string | undefined;
}

interface Need {
  readonly what: string;
  readonly debianPackage: string;
  isMet(machine: Machine): boolean;
}

const needs: readonly Need[] = [
  {
    what: 'mosquitto, an MQTT broker',
    debianPackage: 'mosquitto',
    isMet: (machine) => machine.hasProgram('mosquitto') && machine.hasProgram('mosquitto_passwd'),
  },
  {
    what: 'socat, which makes serial lines of pseudo terminals',
    debianPackage: 'socat',
    isMet: (machine) => machine.hasProgram('socat'),
  },
  {
    what: 'Chromium (name it in CHROME_PATH), or libnss3 for the packaged one',
    debianPackage: 'libnss3',
    isMet: (machine) => hasBrowser(machine) || hasBrowserLibrary(machine),
  },
];

function hasBrowser({ chromePath, hasFile }: Machine): boolean {
  return (chromePath !== undefined && hasFile(chromePath)) || hasFile('/usr/bin/chromium');
}

/** Where distributions keep the one library that the packaged Chromium lacks most often. */
function hasBrowserLibrary({ hasFile }: Machine): boolean {
  const folders = ['/usr/lib/x86_64-linux-gnu', '/usr/lib/aarch64-linux-gnu', '/usr/lib64', '/usr/lib'];
  return folders.some((folder) => hasFile(`${folder}/libnss3.so`));
}

/** Needs that the machine does not meet. */
export function missingNeeds(machine: Machine): readonly Need[] {
  return needs.filter((need) => !need.isMet(machine));
}

/** The machine that this runs on. */
const thisMachine: Machine = {
  hasProgram: (name) => findProgram(name) !== undefined,
  hasFile: existsSync,
  chromePath: process.env['CHROME_PATH'],
};

/** Installs Debian packages, their suggestions left out. RUNLEVEL=1 keeps a broker from starting as a service. */
function installOnDebian(aptGet: string, packages: readonly string[]): void {
  console.log(`The tests need ${packages.join(', ')}: installing with apt-get.`);
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive', RUNLEVEL: '1' };
  const run = (...args: string[]) => spawnSync(aptGet, args, { env, stdio: 'inherit' });
  run('update');
  run('install', '-y', '--no-install-recommends', ...packages);
}

function main(): void {
  const missing = missingNeeds(thisMachine);
  const aptGet = process.getuid?.() === 0 ? findProgram('apt-get') : undefined;
  const packages = missing.map(({ debianPackage }) => debianPackage);
  if (packages.length > 0 && aptGet !== undefined && existsSync('/etc/debian_version'))
    installOnDebian(aptGet, packages);
  const still = missingNeeds(thisMachine);
  for (const { what, debianPackage } of still)
    console.error(`The tests need ${what}; on Debian: sudo apt-get install ${debianPackage}`);
  if (still.length > 0) process.exitCode = 1;
}

if (import.meta.main) main();
