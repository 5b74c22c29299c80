import { useNumbers } from '../shell/use-formats.ts';
import { useLive } from '../store/live-store.ts';
import { selectFlowUnproven, selectPumpFraction } from '../store/output-selectors.ts';
import { en } from '../text/en.ts';

const text = en.live.drawing;

/** What the pump does, in words: how fast it runs, and that no flow is proven while that is so. */
export function usePumpState(): string {
  const numbers = useNumbers();
  const fraction = useLive(selectPumpFraction);
  const unproven = useLive(selectFlowUnproven);
  if (fraction === 0) return text.pumpOff;
  const speed = numbers.percent(fraction);
  return unproven ? `${speed}, ${text.flowUnproven}` : speed;
}
