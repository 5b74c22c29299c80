import { readdirSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { readScenarioFile } from './read.ts';

/** Folder of the scenarios that come with the program. */
export const scenarioFolder = fileURLToPath(new URL('../scenarios/days/', import.meta.url));

/** Every scenario that comes with the program, sorted by name. */
export function scenarioFiles(): string[] {
  return readdirSync(scenarioFolder)
    .filter((name) => name.endsWith('.yaml'))
    .sort()
    .map((name) => join(scenarioFolder, name));
}

/** One line a scenario, for people: the path to give, and its title. */
export function scenarioList(fromFolder: string): string[] {
  return scenarioFiles().map((file) => {
    const read = readScenarioFile(file);
    return `${relative(fromFolder, file).padEnd(46)} ${read.ok ? read.value.title : read.faults[0]}`;
  });
}
