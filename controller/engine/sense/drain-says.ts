import type { Feedback } from '../../../shared-types/engine.ts';
import type { Settings } from '../../../shared-types/settings.ts';
import type { Site } from '../../../shared-types/site.ts';
import { isPumping } from '../situation.ts';
import type { EngineState } from '../state.ts';

/** What fresh feedback says of the drain valve: true for open; null where nothing tells. */
export function drainSaysOf(
  feedback: Feedback | null,
  state: EngineState,
  site: Site,
  settings: Settings,
  runMs: number,
): boolean | null {
  if (site.drain !== 'drain-valve' || feedback === null) return null;
  const { drainOpen, ageMs } = feedback;
  if (ageMs > settings.staleAfterS * 1000) return null;
  // A valve that was seen open before it was told to close with the start of the pump proves nothing.
  return isPumping(state) && runMs - ageMs < state.pump.sinceMs ? null : drainOpen;
}
