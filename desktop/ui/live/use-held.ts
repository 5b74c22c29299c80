import { useEffect, useState } from 'react';

/** True once something has been so for a time: a device answers a step later, which is no difference yet. */
export function useHeld(isSo: boolean, forMs: number): boolean {
  const [held, setHeld] = useState(false);
  useEffect(() => {
    if (!isSo) return;
    const timer = setTimeout(() => setHeld(true), forMs);
    return () => {
      clearTimeout(timer);
      setHeld(false);
    };
  }, [isSo, forMs]);
  return isSo && held;
}
