import { useEffect } from 'react';

/** Addresses of the neighbours; undefined where there is none. */
interface Neighbours {
  readonly before: string | undefined;
  readonly after: string | undefined;
}

/** True where arrow keys with Shift have a meaning of their own. */
const takesArrows = (target: EventTarget | null): boolean =>
  target instanceof HTMLInputElement ||
  target instanceof HTMLTextAreaElement ||
  target instanceof HTMLSelectElement ||
  (target instanceof HTMLElement && target.closest('[role="radiogroup"], [role="menu"]') !== null);

/** Shift with an arrow key goes to the day before or after. */
export function useDayKeys({ before, after }: Neighbours): void {
  useEffect(() => {
    const go = (event: KeyboardEvent) => {
      if (!event.shiftKey || event.altKey || event.ctrlKey || event.metaKey || takesArrows(event.target))
        return;
      const address = { ArrowLeft: before, ArrowRight: after }[event.key];
      if (address === undefined) return;
      event.preventDefault();
      window.location.hash = address;
    };
    window.addEventListener('keydown', go);
    return () => window.removeEventListener('keydown', go);
  }, [before, after]);
}
