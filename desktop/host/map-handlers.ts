import { ImportRefused } from '../../sim/import/import-refused.ts';
import { forgetMap, keepMap, mapsFile, readKeptMaps } from '../../sim/import/kept-maps.ts';
import type { Handlers } from './handlers.ts';
import { refusal, wordsOf } from './replies.ts';

type MapHandlers = Pick<Handlers, 'columnMaps' | 'keepColumnMap' | 'forgetColumnMap'>;

/** Answers what is asked of the maps of columns that are kept beside the logs. */
export function mapHandlers(dataFolder: string): MapHandlers {
  const file = mapsFile(dataFolder);
  return {
    columnMaps: async () => answered(() => readKeptMaps(file)),
    keepColumnMap: async ({ name, map }) => answered(() => keepMap(file, name, map)),
    forgetColumnMap: async ({ name }) => answered(() => forgetMap(file, name)),
  };
}

function answered(maps: () => ReturnType<typeof readKeptMaps>) {
  try {
    return { ok: true as const, result: [...maps()] };
  } catch (thrown) {
    if (thrown instanceof ImportRefused) return refusal('error', thrown.message);
    return refusal('error', `The maps of columns cannot be kept here: ${wordsOf(thrown)}.`);
  }
}
