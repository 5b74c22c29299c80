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

/** A reason without numbers: always the same, so it is made once. */
function plain(code: ReasonCode): Reason {
  const values: Reason['values'] = Object.freeze({});
  return Object.freeze({ code, values, text: reasonText(code, values) });
}

const pumpOffWhenEmpty = plain('pump-off-when-empty');
const pumpFills = plain('pump-fills');
const pumpOffWhileEmptying = plain('pump-off-while-emptying');
const drainPumpRuns = plain('drain-pump-runs');
const drainPumpOff = plain('drain-pump-off');
const outputNotFitted = plain('output-not-fitted');
const drainOpenWhenEmpty = plain('drain-open-when-empty');
const drainOpenToEmpty = plain('drain-open-to-empty');
const drainClosedToHold = plain('drain-closed-to-hold');

function pumpReason(phase: Phase, whole: Reason): Reason {
  switch (phase.name) {
    case 'empty':
      return pumpOffWhenEmpty;
    case 'filling':
      return pumpFills;
    case 'emptying':
      return pumpOffWhileEmptying;
    case 'circulating':
    case 'resting':
    case 'stopped':
      return whole;
    default:
      return assertNever(phase);
  }
}

const valveReasons: Readonly<Record<Phase['name'], Reason>> = {
  empty: drainOpenWhenEmpty,
  emptying: drainOpenToEmpty,
  stopped: drainOpenToEmpty,
  filling: drainClosedToHold,
  circulating: drainClosedToHold,
  resting: drainClosedToHold,
};

function drainReason(phase: Phase, { drain }: Site, { drainPumpOn }: Outputs): Reason {
  switch (drain) {
    case 'drain-valve':
      return valveReasons[phase.name];
    case 'drain-pump':
      return drainPumpOn ? drainPumpRuns : drainPumpOff;
    case 'pump-stop':
    case 'none':
      return outputNotFitted;
    default:
      return assertNever(drain);
  }
}
