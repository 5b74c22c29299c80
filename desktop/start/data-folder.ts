import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';

/**
 * Makes sure that the data folder is there and can be written.
 * @returns why not, in words, or undefined.
 */
export function dataFolderFault(folder: string): string | undefined {
  try {
    mkdirSync(folder, { recursive: true });
    // Asking for permission is not enough: the disk may be read-only, or full.
    rmSync(mkdtempSync(join(folder, '.probe-')), { recursive: true });
    return undefined;
  } catch (thrown) {
    return `the data folder ${folder} cannot be written: ${why(thrown)}; choose another with --data`;
  }
}

const whys: Readonly<Record<string, string>> = {
  EACCES: 'it is not yours to write',
  EPERM: 'it is not yours to write',
  EROFS: 'the disk is read-only',
  ENOSPC: 'the disk is full',
  EEXIST: 'a file has its name',
  ENOTDIR: 'a file stands where a folder should',
};

function why(thrown: unknown): string {
  if (!(thrown instanceof Error)) return String(thrown);
  return ('code' in thrown && typeof thrown.code === 'string' && whys[thrown.code]) || thrown.message;
}
