import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { z } from 'zod';
import { type ImportMap, type KeptMaps, keptMapsSchema } from '../../shared-types/foreign-log.ts';
import { ImportRefused } from './import-refused.ts';

type KeptMap = KeptMaps['maps'][number];

/** File of the maps below the data folder. */
export const mapsFile = (dataFolder: string): string => join(dataFolder, 'column-maps.json');

/** Maps by their names. @throws ImportRefused when the file is none of maps. */
export function readKeptMaps(path: string): readonly KeptMap[] {
  if (!existsSync(path)) return [];
  let content: unknown;
  try {
    content = JSON.parse(readFileSync(path, 'utf8'));
  } catch (thrown) {
    throw new ImportRefused(`${path} cannot be read: ${thrown instanceof Error ? thrown.message : thrown}`);
  }
  const parsed = keptMapsSchema.safeParse(content);
  if (!parsed.success)
    throw new ImportRefused(`${path} holds no maps of columns:\n${z.prettifyError(parsed.error)}`);
  return parsed.data.maps;
}

/** Keeps a map in place of one of the same name. @throws ImportRefused when there are too many, or no room. */
export function keepMap(path: string, name: string, map: ImportMap): readonly KeptMap[] {
  const others = readKeptMaps(path).filter((kept) => kept.name !== name);
  return writeMaps(path, [...others, { name, map }]);
}

export function forgetMap(path: string, name: string): readonly KeptMap[] {
  return writeMaps(
    path,
    readKeptMaps(path).filter((kept) => kept.name !== name),
  );
}

function writeMaps(path: string, maps: readonly KeptMap[]): readonly KeptMap[] {
  const sorted = maps.toSorted((a, b) => a.name.localeCompare(b.name));
  const checked = keptMapsSchema.safeParse({ schema: 1, maps: sorted });
  if (!checked.success) throw new ImportRefused(`the map cannot be kept: ${z.prettifyError(checked.error)}`);
  mkdirSync(dirname(path), { recursive: true });
  // A write that is broken off must not take the other maps with it.
  const half = `${path}.${process.pid}.new`;
  writeFileSync(half, `${JSON.stringify(checked.data, null, 2)}\n`);
  renameSync(half, path);
  return checked.data.maps;
}
