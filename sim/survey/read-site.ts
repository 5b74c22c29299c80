import { formatSiteFault, readSiteFile } from '../../controller/site-file.ts';
import type { Site } from '../../shared-types/site.ts';
import type { PlantSetup } from '../plant/parts.ts';
import { readScenario } from '../scenario/read.ts';

export interface SurveyFlags {
  readonly site?: string;
  readonly scenario?: string;
}

type ReadSite =
  | { readonly ok: true; readonly site: Site; readonly setup: PlantSetup }
  | { readonly ok: false; readonly faults: readonly string[] };

/** The loop to survey: a site file, a scenario, or a scenario with another site file. */
export function readSite({ site: siteFile, scenario }: SurveyFlags): ReadSite {
  if (scenario !== undefined) {
    const read = readScenario(scenario, siteFile === undefined ? {} : { siteFile });
    return read.ok ? { ok: true, site: read.value.site, setup: read.value.setup } : read;
  }
  if (siteFile === undefined) return { ok: false, faults: ['--site or --scenario names the loop'] };
  const read = readSiteFile(siteFile);
  return read.ok
    ? { ok: true, site: read.site, setup: {} }
    : { ok: false, faults: read.faults.map(formatSiteFault) };
}
