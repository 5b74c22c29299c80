import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';

const read = (path: string) => JSON.parse(readFileSync(new URL(`../../../${path}`, import.meta.url), 'utf8'));
const packaging = read('desktop/electron/packaging.json');
const project = read('package.json');

it('the package brings the Electron that the project is checked against', () => {
  expect(packaging.electronVersion).toBe(project.devDependencies.electron);
});

it('the package holds what was built and nothing else: no source, no data, no library twice', () => {
  expect(packaging.files).toEqual(['package.json', 'dist/web/**', 'dist/electron/**']);
  expect(project.main).toMatch(/^dist\/electron\//);
  // What is built brings its libraries along, so nothing is compiled again for the package.
  expect(packaging.npmRebuild).toBe(false);
  expect(packaging.directories.output).toMatch(/^dist\//);
});

it('the packaged program cannot be made to run as a bare Node', () => {
  expect(packaging.electronFuses).toEqual({
    runAsNode: false,
    enableNodeOptionsEnvironmentVariable: false,
    enableNodeCliInspectArguments: false,
    onlyLoadAppFromAsar: true,
  });
  expect(packaging.asar).toBe(true);
});

it('there is a package for each kind of desktop, and none is published by itself', () => {
  expect([packaging.linux, packaging.win, packaging.mac].map(({ target }) => target)).toEqual([
    ['AppImage', 'deb'],
    ['nsis'],
    ['dmg'],
  ]);
  expect(packaging.publish).toBeNull();
});
