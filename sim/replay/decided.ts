import type { LogRecord, Outcome } from '../../shared-types/log.ts';

/**
 * What a controller decided at a logged step.
 *
 * @throws RangeError for a step of another logger, in which no rule of ours decided anything.
 */
export function decidedOutcome({ input, outcome }: LogRecord): Outcome {
  const { phase } = outcome;
  const { phase: why, pump, drain } = outcome.reasons;
  if (phase === 'unknown' || why === 'unknown' || pump === 'unknown' || drain === 'unknown')
    throw new RangeError(
      `${input.localDay} was taken in from another logger: nothing was decided then that could be decided again`,
    );
  return { ...outcome, phase, reasons: { phase: why, pump, drain } };
}
