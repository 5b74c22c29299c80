import { defaultSettings } from '../../../shared-types/settings.ts';
import { selectTemperatureUnit, useChoices } from '../store/choices-store.ts';
import { selectSiteMessage } from '../store/live-selectors.ts';
import { useLive } from '../store/live-store.ts';
import { draftFaults } from './draft-faults.ts';
import { useDraft } from './draft-store.ts';
import type { FormPart } from './form-part.ts';

/** The changes that a person is making up for a site; without a controller they begin at the defaults. */
export function useFormPart(site: string): FormPart & { readonly heard: boolean } {
  const message = useLive(selectSiteMessage);
  const temperature = useChoices(selectTemperatureUnit);
  const inForce = message?.settings ?? defaultSettings;
  const draft = useDraft(site, inForce);
  const faults = draftFaults(draft, temperature);
  return { site, inForce, draft, temperature, faults, heard: message !== null };
}
