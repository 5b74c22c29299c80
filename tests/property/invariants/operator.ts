import { eachStep, type Invariant, isByHazard } from './invariant.ts';

const unlocks = 'Asking for automatic lifts a lock after failures: that is what the lock waits for.';
const byHand =
  'A person who says that a pan without a drain was emptied by hand ends what protects water that is no longer there.';

export const operatorOverridesNothing: Invariant = {
  name: 'operator-overrides-nothing',
  promise:
    'Where a protection decides, the step with a request gives the same outputs as the same step without it.',
  exceptions: [unlocks, byHand],
  watch: eachStep(({ before, input, decision }, { site, settings, step }) => {
    if (input.request === null) return;
    const unasked = step(before, { ...input, request: null }, site, settings).decision;
    const { code } = unasked.reasons.phase;
    if (!isByHazard(unasked)) return;
    if (code === 'fill-failed-locked' && asksFor(input.request) === 'automatic') return;
    if (site.drain === 'none' && asksFor(input.request) === 'empty') return;
    const same = JSON.stringify(decision.outputs) === JSON.stringify(unasked.outputs);
    return same ? undefined : `${asksFor(input.request)} changed the outputs under ${code}`;
  }),
};

export const operatorIsAnswered: Invariant = {
  name: 'operator-is-answered',
  promise:
    'Every request is answered at its step, none else is; one that is too old, from the future or heard before changes no lease.',
  exceptions: [],
  watch: eachStep(({ before, input, decision }) => {
    const { request } = input;
    const { answer } = decision;
    if (request === null) return answer === null ? undefined : 'an answer to nothing';
    if (answer === null || answer.id !== request.id) return 'no answer';
    const late = request.ageMs > request.lifeMs || request.ageMs < -5000;
    const repeated = before.operator.seen.includes(request.id);
    return answer.accepted && (late || repeated) ? 'obeyed too late, too early or twice' : undefined;
  }),
};

export const leaseEnds: Invariant = {
  name: 'lease-ends',
  promise: 'What an operator asked for ends by itself, and never gets longer without another request.',
  exceptions: [],
  watch: eachStep(({ before, input, state, decision }) => {
    const { lease } = state.operator;
    if (decision.lease !== null && decision.lease.remainingMs <= 0) return 'a lease that has ended';
    if (lease === null || input.request !== null) return;
    const given = before.operator.lease?.untilMs ?? Number.NEGATIVE_INFINITY;
    return lease.untilMs > given ? 'a lease that grew' : undefined;
  }),
};

function asksFor(request: { readonly operation: { readonly kind: string } }): string {
  return request.operation.kind;
}
