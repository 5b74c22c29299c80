import { useEffect } from 'react';
import { selectDoor } from '../store/live-selectors.ts';
import { useLive } from '../store/live-store.ts';

/**
 * Asks at once, and again and again while the page is looked at and the monitor answers.
 *
 * @param load - Stays the same function as long as it asks for the same.
 */
export function useRefresh(load: () => Promise<void>, everyMs: number): void {
  const door = useLive(selectDoor);
  useEffect(() => {
    if (door !== 'open') return;
    const loadIfSeen = () => {
      if (document.visibilityState === 'visible') void load();
    };
    loadIfSeen();
    const timer = setInterval(loadIfSeen, everyMs);
    document.addEventListener('visibilitychange', loadIfSeen);
    return () => {
      clearInterval(timer);
      document.removeEventListener('visibilitychange', loadIfSeen);
    };
  }, [door, load, everyMs]);
}
