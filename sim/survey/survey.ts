import { defaultSettings, type SettingName, type Settings } from '../../shared-types/settings.ts';
import type { Site } from '../../shared-types/site.ts';
import { impossibilities, impossibilityText } from '../plant/impossible.ts';
import { type PlantSetup, partsOf } from '../plant/parts.ts';
import { assumedSection } from './assumed-section.ts';
import { controlSection } from './control-section.ts';
import { emptyingSection } from './emptying-section.ts';
import { panSection } from './pan-section.ts';
import { pumpSection } from './pump-section.ts';
import type { Remark, Survey } from './report.ts';
import { roofSection } from './roof-section.ts';
import { testReportSection } from './test-report-section.ts';
import { type Trial, tryLoop } from './trial.ts';
import { weatherSection } from './weather-section.ts';

/** Tells what the loop of a site file will be, and what of it cannot be. */
export function surveyOf(site: Site, setup: PlantSetup = {}): Survey {
  const parts = partsOf(site, setup);
  const { grossAreaM2 } = site.pan;
  const settings = settingsOf(site);
  const refusals: Remark[] = impossibilities(parts).map((why) => ({
    code: why.code,
    text: impossibilityText(why),
  }));
  const trial = tryLoop(site, setup);
  const sections = [
    roofSection(site, parts),
    panSection(parts, grossAreaM2, trial.loopLMin),
    testReportSection(parts),
    pumpSection(parts, settings, trial),
    emptyingSection(parts, settings, trial),
    weatherSection(site, parts, settings),
    controlSection(parts, grossAreaM2, settings, trial),
    assumedSection(parts),
  ];
  return {
    site: site.name,
    title: site.title,
    sections,
    warnings: sections.flatMap(({ warnings }) => warnings),
    refusals: refusals.length > 0 ? refusals : trialRefusals(trial, parts.plumbing.drain),
  };
}

function settingsOf({ settings = {} }: Site): Settings {
  const given = Object.entries(settings).filter(([, value]) => value !== undefined);
  return { ...defaultSettings, ...(Object.fromEntries(given) as Partial<Record<SettingName, number>>) };
}

/** What only shows when the loop is tried. */
function trialRefusals({ fillS, drainS, leastFillLMin }: Trial, drain: Site['drain']): Remark[] {
  const refusals: Remark[] = [];
  if (fillS === null)
    refusals.push({
      code: 'never-full',
      text: `The pan was not full after 4 hours of ${leastFillLMin.toFixed(1)} L/min or more.`,
    });
  else if (drainS === null && drain !== 'none')
    refusals.push({ code: 'never-empty', text: 'The pan was not empty after 4 hours.' });
  return refusals;
}
