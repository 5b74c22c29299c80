import type { Decision } from '../../../shared-types/engine.ts';
import { decisionSchema } from '../../../shared-types/engine.ts';
import { type Reason, reasonCodes } from '../../../shared-types/reasons.ts';
import { eachStep, type Invariant, isPumping } from './invariant.ts';

const codes: ReadonlySet<string> = new Set(reasonCodes);
/** A sentence or two; `?` stands for a number that was not given. */
const sentence = /^[A-Z][^?]*\.$/;

export const outputsHaveReasons: Invariant = {
  name: 'outputs-have-reasons',
  promise:
    'Phase, pump and drain each have a reason of the closed list, in a sentence with all its numbers; none is an internal error, and what they say of pump and drain is what these do.',
  exceptions: [],
  watch: eachStep(({ decision }) => {
    const { phase, pump, drain } = decision.reasons;
    const broken = [phase, pump, drain].find((reason) => !isWhole(reason));
    if (broken !== undefined) return `the reason ${JSON.stringify(broken)}`;
    return phase.code === 'internal-error' ? 'an internal error' : contradiction(decision);
  }),
};

function isWhole(reason: Reason | undefined): boolean {
  return reason !== undefined && codes.has(reason.code) && sentence.test(reason.text);
}

function contradiction(decision: Decision): string | undefined {
  const { outputs, reasons } = decision;
  const { pump, drain } = reasons;
  if (drain.code === 'drain-closed-to-hold' && outputs.drainOpen) return 'closed to hold, yet open';
  if (drain.code.startsWith('drain-open') && !outputs.drainOpen) return 'open to empty, yet closed';
  if ((drain.code === 'drain-pump-runs') !== outputs.drainPumpOn) return 'the drain pump does otherwise';
  if (pump.code.startsWith('pump-off') && isPumping(decision)) return 'a pump said to be off';
  return pump.code === 'pump-fills' && !isPumping(decision) ? 'a pump said to fill' : undefined;
}

export const decisionsHaveTheirShape: Invariant = {
  name: 'decisions-have-their-shape',
  promise: 'Every decision is one that the vocabulary describes, in all its parts.',
  exceptions: [],
  watch: eachStep(({ decision }) => {
    const { error } = decisionSchema.safeParse(decision);
    return error === undefined
      ? undefined
      : error.issues.map(({ path, message }) => `${path}: ${message}`).join();
  }),
};
