import { useMemo, useSyncExternalStore } from 'react';
import { parseRoute, type Route } from './route.ts';

function subscribe(changed: () => void): () => void {
  window.addEventListener('hashchange', changed);
  return () => window.removeEventListener('hashchange', changed);
}

/** The part of the page's address that says where a person is. */
export const useHash = (): string => useSyncExternalStore(subscribe, () => window.location.hash);

/** The route of the page's address. */
export function useRoute(): Route {
  const hash = useHash();
  return useMemo(() => parseRoute(hash), [hash]);
}
