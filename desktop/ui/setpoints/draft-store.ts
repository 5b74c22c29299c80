import { create } from 'zustand';
import type { Settings } from '../../../shared-types/settings.ts';
import { currentDraft, type Draft } from './draft.ts';

interface DraftState {
  /** By site. They outlive a look at another screen. */
  readonly drafts: Readonly<Record<string, Draft>>;
}

/** What a person is editing on this page. */
const useDrafts = create<DraftState>(() => ({ drafts: {} }));

/** The draft of a site as it is to be shown. */
export function useDraft(site: string, inForce: Settings): Draft {
  const draft = useDrafts(({ drafts }) => (Object.hasOwn(drafts, site) ? drafts[site] : undefined));
  return currentDraft(draft, inForce);
}

export function putDraft(site: string, draft: Draft): void {
  useDrafts.setState(({ drafts }) => ({ drafts: { ...drafts, [site]: draft } }));
}
