import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';

/** Folders that hold system programs but that a plain user's PATH may lack. */
const systemFolders = ['/usr/sbin', '/usr/local/sbin', '/opt/homebrew/sbin', '/opt/homebrew/bin'];

/** Path of an installed program, or undefined. */
export function findProgram(name: string): string | undefined {
  const folders = [...(process.env['PATH'] ?? '').split(delimiter), ...systemFolders];
  return folders.map((folder) => join(folder, name)).find(isExecutable);
}

function isExecutable(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/** @throws when the program is not installed; `npm test` installs it or says so before any test. */
export function needProgram(name: string): string {
  const path = findProgram(name);
  if (path === undefined) throw new Error(`${name} is not installed; run: node tests/system-programs.ts`);
  return path;
}
