import { create } from 'zustand';
import type { RangeDraft } from './range-draft.ts';

/** What is typed into the form of a sweep. */
export interface SweepForm {
  readonly ranges: readonly RangeDraft[];
  readonly by: 'newest' | 'fromTo';
  readonly count: string;
  readonly from: string;
  readonly to: string;
}

interface Forms {
  /** By site. They outlive a look at another screen. */
  readonly forms: Readonly<Record<string, SweepForm>>;
}

const useForms = create<Forms>(() => ({ forms: {} }));

/** @param first - What stands there before anybody typed. */
export function useSweepForm(site: string, first: SweepForm): SweepForm {
  return useForms(({ forms }) => (Object.hasOwn(forms, site) ? forms[site] : undefined)) ?? first;
}

export function putSweepForm(site: string, form: SweepForm): void {
  useForms.setState(({ forms }) => ({ forms: { ...forms, [site]: form } }));
}
