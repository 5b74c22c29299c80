import type { LoopFit } from '../../../../shared-types/tuning.ts';
import { readyValue } from '../../store/loaded.ts';
import { selectKeptFit, useTuning } from '../../store/tuning-store.ts';
import { otherFit } from './other-fit.ts';

/** Whether an answer rests on another fit than the one that is kept now. */
export function useOlderFit(
  site: string,
  run: { readonly keptThen: LoopFit | null | undefined } | null,
): boolean {
  const kept = readyValue(useTuning(selectKeptFit(site)));
  return run !== null && otherFit(run.keptThen, kept);
}
