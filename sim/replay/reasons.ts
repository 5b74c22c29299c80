import { reasonText } from '../../controller/engine/index.ts';
import type { Decision } from '../../shared-types/engine.ts';
import type { Outcome } from '../../shared-types/log.ts';

/** What either side says of its decision. A log keeps no numbers with a reason: where both give the same one, it is told with those of now. */
export function bothReasons(
  sayer: keyof Outcome['reasons'],
  logged: Outcome,
  decision: Decision,
): { readonly loggedReason: string; readonly replayedReason: string } {
  const reason = decision.reasons[sayer];
  const code = logged.reasons[sayer];
  return {
    loggedReason: code === reason.code ? reason.text : reasonText(code, {}),
    replayedReason: reason.text,
  };
}
