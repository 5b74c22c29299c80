import { mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { isDeepStrictEqual } from 'node:util';
import { z } from 'zod';
import { channels } from '../../shared-types/channels.ts';
import type { Site } from '../../shared-types/site.ts';
import { panCells, partsOf, pipeNodes, storeLayers } from '../plant/parts.ts';
import type { PlantState } from '../plant/state.ts';

/** A simulated loop put away, so that it goes on where it stopped: what the file holds, as JSON. */
export interface KeptPlant {
  readonly schema: 1;
  readonly site: string;
  /** Instant at which the loop stands so [UTC ms]. */
  readonly atMs: number;
  readonly plant: PlantState;
}

const massKg = z.number().min(0);
const waterC = z.number().min(-100).max(200);
const cell = z.strictObject({ massKg, waterC });
const keptSchema = z.strictObject({
  schema: z.literal(1),
  site: z.string(),
  atMs: z.number(),
  plant: z.strictObject({
    parts: z.unknown(),
    pan: z.array(z.strictObject({ massKg, waterC, sheetC: waterC })).length(panCells),
    supply: z.array(cell).length(pipeNodes),
    return: z.array(cell).length(pipeNodes),
    store: z.array(cell).length(storeLayers),
    reservoir: cell.nullable(),
    moving: z.strictObject({
      pumpFraction: z.number(),
      drainOpen: z.boolean(),
      drainPumpOn: z.boolean(),
      exchangerPumpOn: z.boolean(),
      flowLMin: z.number(),
      pumpPowerW: z.number(),
    }),
    sensors: z.partialRecord(
      z.enum(channels),
      z.strictObject({ bodyValue: z.number(), shownValue: z.number() }),
    ),
    readingCount: z.int().min(0),
  }),
});

/** Puts the loop away. An interruption leaves the old file or the new one, never half of one. */
export function keepPlant(path: string, kept: KeptPlant): void {
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(`${path}.new`, `${JSON.stringify(kept)}\n`);
  renameSync(`${path}.new`, path);
}

type Loaded =
  | { readonly ok: true; readonly kept: KeptPlant }
  | { readonly ok: false; readonly why: 'absent' | 'unreadable' | 'of another site' };

/** Takes the loop up again, if it is of this site and the site's parts are still the same. */
export function loadPlant(path: string, site: Site): Loaded {
  let text: string;
  try {
    text = readFileSync(path, 'utf8');
  } catch (error) {
    const absent = (error as NodeJS.ErrnoException).code === 'ENOENT';
    return { ok: false, why: absent ? 'absent' : 'unreadable' };
  }
  const kept = parseKept(text);
  if (kept === undefined) return { ok: false, why: 'unreadable' };
  const parts = partsOf(site);
  if (kept.site !== site.name || !isDeepStrictEqual(kept.plant.parts, parts))
    return { ok: false, why: 'of another site' };
  const sensors = kept.plant.sensors as PlantState['sensors'];
  return { ok: true, kept: { ...kept, plant: { ...kept.plant, sensors, parts } } };
}

function parseKept(text: string): z.infer<typeof keptSchema> | undefined {
  try {
    return keptSchema.safeParse(JSON.parse(text)).data;
  } catch {
    return undefined;
  }
}
