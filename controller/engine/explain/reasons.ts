import type { Decision, Outputs } from '../../../shared-types/engine.ts';
import type { Reason, ReasonCode } from '../../../shared-types/reasons.ts';
import type { Site } from '../../../shared-types/site.ts';
import { assertNever } from '../assert-never.ts';
import type { Move } from '../sequence/advance.ts';
import type { Cause, Phase } from '../state.ts';
import { reasonText } from './reason-text.ts';

/** Why the phase and each output are as they are. */
export function reasonsOf({ phase, cause }: Move, site: Site, outputs: Outputs): Decision['reasons'] {
  const whole = reason(cause);
  return {
    phase: whole,
    pump: pumpReason(phase, whole),
    drain: drainReason(phase, site, outputs),
  };
}

export function reason({ code, values }: Cause): Reason {
  return { code, values, text: reasonText(code, values) };
}

function plain(code: ReasonCode): Reason {
  return reason({ code, values: {} });
}

function pumpReason(phase: Phase, whole: Reason): Reason {
  switch (phase.name) {
    case 'empty':
      return plain('pump-off-when-empty');
    case 'filling':
      return plain('pump-fills');
    case 'emptying':
      return plain('pump-off-while-emptying');
    case 'circulating':
    case 'resting':
    case 'stopped':
      return whole;
    default:
      return assertNever(phase);
  }
}

function drainReason(phase: Phase, { drain }: Site, { drainPumpOn }: Outputs): Reason {
  switch (drain) {
    case 'drain-valve':
      return valveReason(phase);
    case 'drain-pump':
      return plain(drainPumpOn ? 'drain-pump-runs' : 'drain-pump-off');
    case 'pump-stop':
    case 'none':
      return plain('output-not-fitted');
    default:
      return assertNever(drain);
  }
}

function valveReason({ name }: Phase): Reason {
  switch (name) {
    case 'empty':
      return plain('drain-open-when-empty');
    case 'emptying':
    case 'stopped':
      return plain('drain-open-to-empty');
    case 'filling':
    case 'circulating':
    case 'resting':
      return plain('drain-closed-to-hold');
    default:
      return assertNever(name);
  }
}
