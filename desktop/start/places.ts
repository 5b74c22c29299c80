import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The loop of the demo. */
export const demoSiteFile = fileURLToPath(
  new URL('../../sim/scenarios/quillhaven-wash-house.yaml', import.meta.url),
);

/** Where the simulated device keeps the state of its loop between two starts. */
export const plantStatePath = (dataFolder: string, site: string) =>
  join(dataFolder, site, 'plant-state.json');
