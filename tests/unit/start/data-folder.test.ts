import { readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { dataFolderFault } from '../../../desktop/start/data-folder.ts';
import { temporaryFolder } from '../../support/temporary.ts';

const folder = temporaryFolder('data').path;
afterAll(() => rmSync(folder, { recursive: true }));

describe('dataFolderFault', () => {
  it('makes the folder and leaves it empty', () => {
    expect(dataFolderFault(join(folder, 'a/b'))).toBeUndefined();
    expect(readdirSync(join(folder, 'a/b'))).toEqual([]);
  });

  it('says in words why a folder cannot be had', () => {
    writeFileSync(join(folder, 'file'), '');
    expect(dataFolderFault(join(folder, 'file'))).toMatch(/cannot be written: a file has its name/);
    expect(dataFolderFault(join(folder, 'file/below'))).toMatch(/a file stands where a folder should/);
  });
});
