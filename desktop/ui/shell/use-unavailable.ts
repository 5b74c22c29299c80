import { selectListening, selectLookOnly } from '../store/live-selectors.ts';
import { useLive } from '../store/live-store.ts';
import { en } from '../text/en.ts';

/** Why nothing can be asked of the controller now, in words; null while it can. */
export function useUnavailable(): string | null {
  const listening = useLive(selectListening);
  const lookOnly = useLive(selectLookOnly);
  if (listening) return null;
  return lookOnly ? en.requests.lookOnly : en.requests.unavailable;
}
