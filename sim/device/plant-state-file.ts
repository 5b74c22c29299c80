import { mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { isDeepStrictEqual } from 'node:util';
import { z } from 'zod';
import { channels } from '../../shared-types/channels.ts';
import type { Site } from '../../shared-types/site.ts';
import { type PlantSetup, panCells, partsOf, pipeNodes, storeLayers } from '../plant/parts.ts';
import type { PlantState } from '../plant/state.ts';

/** A simulated loop put away, so that it goes on where it stopped: what the file holds, as JSON. */
export interface KeptPlant {
  readonly schema: 2;
  readonly site: string;
  /** Instant at which the loop stands so [UTC ms]. */
  readonly atMs: number;
  readonly plant: PlantState;
}

const finite = z.number();
const kg = z.number().min(0);
const celsius = z.number().min(-100).max(200);
const fraction = z.number().min(0).max(1);
const column = (value: z.ZodNumber, count: number) => z.array(value).length(count);
const row = (count: number) => ({
  massKg: column(kg, count),
  waterC: column(celsius, count),
  iceKg: column(kg, count),
});
/** Empty before the first step. */
const sensorColumn = z.union([column(finite, channels.length), column(finite, 0)]);
const lane = z.strictObject({ ...row(panCells), sheetC: column(celsius, panCells) });

const keptSchema = z.strictObject({
  schema: z.literal(2),
  site: z.string(),
  atMs: finite,
  plant: z.strictObject({
    parts: z.unknown(),
    pan: z.strictObject({ core: lane, edge: lane }),
    supply: z.strictObject(row(pipeNodes)),
    return: z.strictObject(row(pipeNodes)),
    store: z.strictObject(row(storeLayers)),
    reservoir: z.strictObject(row(1)).nullable(),
    snowKgM2: kg,
    airFraction: fraction,
    returnAirFraction: fraction,
    moving: z.strictObject({
      pumpFraction: fraction,
      drainOpen: z.boolean(),
      drainPumpOn: z.boolean(),
      exchangerPumpOn: z.boolean(),
      flowLMin: finite,
      pumpPowerW: finite,
    }),
    sensors: z.strictObject({ bodyValue: sensorColumn, shownValue: sensorColumn }),
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

/** Takes the loop up again, if it is of this site and the loop's parts are still the same. */
export function loadPlant(path: string, site: Site, setup?: PlantSetup): Loaded {
  let text: string;
  try {
    text = readFileSync(path, 'utf8');
  } catch (error) {
    const absent = (error as NodeJS.ErrnoException).code === 'ENOENT';
    return { ok: false, why: absent ? 'absent' : 'unreadable' };
  }
  const kept = parseKept(text);
  if (kept === undefined) return { ok: false, why: 'unreadable' };
  const parts = partsOf(site, setup);
  // The file holds what JSON makes of the parts.
  const asKept: unknown = JSON.parse(JSON.stringify(parts));
  if (kept.site !== site.name || !isDeepStrictEqual(kept.plant.parts, asKept))
    return { ok: false, why: 'of another site' };
  return { ok: true, kept: { ...kept, plant: { ...kept.plant, parts } } };
}

function parseKept(text: string): z.infer<typeof keptSchema> | undefined {
  try {
    return keptSchema.safeParse(JSON.parse(text)).data;
  } catch {
    return undefined;
  }
}
