import { unitText } from '../replay/fit/fit-words.ts';
import { useSentence } from '../shell/use-formats.ts';

/** Turns a sentence of a check into one with the units that were chosen, as they are written on paper. */
export function usePanSentence(): (sentence: string) => string {
  const inUnits = useSentence();
  return (sentence) => unitText(inUnits(sentence));
}
