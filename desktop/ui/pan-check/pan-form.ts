import { create } from 'zustand';

/** Days from one to another, as they are typed. */
export interface SpanDraft {
  readonly from: string;
  readonly to: string;
}

/** What is typed into the form of a pan check. */
export interface PanForm {
  readonly look: SpanDraft;
  readonly by: 'oldest' | 'fromTo';
  readonly reference: SpanDraft;
}

interface Forms {
  /** By site. They outlive a look at another screen. */
  readonly forms: Readonly<Record<string, PanForm>>;
}

const useForms = create<Forms>(() => ({ forms: {} }));

/** @param first - What stands there before anybody typed. */
export function usePanForm(site: string, first: PanForm): PanForm {
  return useForms(({ forms }) => (Object.hasOwn(forms, site) ? forms[site] : undefined)) ?? first;
}

export function putPanForm(site: string, form: PanForm): void {
  useForms.setState(({ forms }) => ({ forms: { ...forms, [site]: form } }));
}
