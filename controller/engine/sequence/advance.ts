import type { ReasonCode } from '../../../shared-types/reasons.ts';
import { assertNever } from '../assert-never.ts';
import { failuresToLock } from '../hazards/table.ts';
import { canEmpty, canRest } from '../pan.ts';
import { overdueMs } from '../sense/pan-water.ts';
import type { Command, Situation } from '../situation.ts';
import { type Cause, type Phase, startUp } from '../state.ts';
import { isFilled } from './fill-proof.ts';
import { startBlock, stopBlock } from './least-times.ts';

/** The phase from now on, and why. */
export interface Move {
  readonly phase: Phase;
  readonly cause: Cause;
}

/** An emptying that nobody wanted for itself may end early, should the pan be found full and all well. */
function endsAtRest(code: ReasonCode): boolean {
  return code === 'start-up-proving' || code === 'sensors-failed';
}

/** The drain is shut at once on a pump that runs on, in whatever phase: it is never let run into an open drain. */
function shutsOnRunningPump({ goal, cause }: Command): boolean {
  return cause.code === 'pump-runs-on' && goal === 'rest';
}

type PhaseOf<Name extends Phase['name']> = Extract<Phase, { name: Name }>;

/** The phase machine: carries out a command, as far as proofs and least times allow. */
export function advance(situation: Situation, command: Command): Move {
  const { phase } = situation.state;
  switch (phase.name) {
    case 'empty':
      return fromEmpty(phase, situation, command);
    case 'filling':
    case 'circulating':
      return fromPumping(phase, situation, command);
    case 'resting':
      return fromResting(phase, situation, command);
    case 'emptying':
      return fromEmptying(phase, situation, command);
    case 'stopped':
      return fromStopped(phase, situation, command);
    default:
      return assertNever(phase);
  }
}

function fromEmpty(phase: PhaseOf<'empty'>, situation: Situation, command: Command): Move {
  if (command.goal === 'lock') return stop(situation, command);
  if (shutsOnRunningPump(command)) return rest(situation, command.cause);
  if (situation.state.water.level !== 'empty') return drain(situation, startUp);
  return command.goal === 'run' ? start(phase, situation, command) : { phase, cause: command.cause };
}

function fromPumping(
  phase: PhaseOf<'filling'> | PhaseOf<'circulating'>,
  situation: Situation,
  command: Command,
): Move {
  const { goal, cause } = command;
  if (goal === 'lock') return stop(situation, command);
  if (goal !== 'run') {
    const wait = stopBlock(situation, command);
    if (wait === null) return leaveWater(situation, command);
    return isFilled(situation) ? circulate(situation, wait, true) : { phase, cause: wait };
  }
  if (!isFilled(situation)) return { phase, cause };
  return circulate(situation, cause.code === 'filling-for-heat' ? filled(phase, situation) : cause, true);
}

function fromResting(phase: PhaseOf<'resting'>, situation: Situation, command: Command): Move {
  if (command.goal === 'lock') return stop(situation, command);
  if (command.goal === 'run') return start(phase, situation, command);
  if (command.goal === 'empty' && canEmpty(situation.site)) return drain(situation, command.cause);
  return { phase, cause: command.cause };
}

function fromEmptying(phase: PhaseOf<'emptying'>, situation: Situation, command: Command): Move {
  const { state, site, runMs } = situation;
  if (command.goal === 'lock') return stop(situation, command);
  if (shutsOnRunningPump(command)) return rest(situation, command.cause);
  if (state.water.level === 'empty') {
    const emptiedS = (runMs - phase.sinceMs) / 1000;
    const afterNoGain = phase.cause.code === 'emptying-no-gain';
    return {
      phase: { name: 'empty', sinceMs: runMs, afterNoGain },
      cause: { code: 'emptied', values: { emptiedS } },
    };
  }
  // The one thing that is demanded of a pan that does not empty: to be kept warm.
  if (command.cause.code === 'frost-measured' && command.goal === 'run')
    return start(phase, situation, command);
  const late = state.water.emptyingMs >= overdueMs(situation.settings);
  const asked = command.goal === 'empty' ? command.cause : phase.cause;
  const cause = late ? notEmptying(situation) : asked;
  if (state.water.level === 'full' && canRest(site)) {
    // A pan that was found full, or that does not empty, is better used than waited for.
    if (endsAtRest(phase.cause.code) && command.goal !== 'empty') return rest(situation, command.cause);
    if (late && command.goal !== 'empty') return rest(situation, cause);
  }
  return { phase, cause: command.urgent ? command.cause : cause };
}

function fromStopped(phase: PhaseOf<'stopped'>, situation: Situation, command: Command): Move {
  if (shutsOnRunningPump(command)) return rest(situation, command.cause);
  if (situation.state.failure.count >= failuresToLock) return { phase, cause: command.cause };
  return canEmpty(situation.site) ? drain(situation, startUp) : rest(situation, startUp);
}

function start(phase: Phase, situation: Situation, command: Command): Move {
  const wait = startBlock(situation, command);
  if (wait !== null) return { phase, cause: wait };
  if (situation.state.water.level === 'full') return circulate(situation, command.cause, false);
  return { phase: { name: 'filling', sinceMs: situation.runMs }, cause: command.cause };
}

function circulate({ runMs }: Situation, cause: Cause, afterFill: boolean): Move {
  return { phase: { name: 'circulating', sinceMs: runMs, afterFill }, cause };
}

/** Stops the pump: the water stays where it may stay and is not wanted out. */
function leaveWater(situation: Situation, { goal, cause }: Command): Move {
  const stays = canRest(situation.site) && (goal === 'rest' || !canEmpty(situation.site));
  return stays ? rest(situation, cause) : drain(situation, cause);
}

function rest({ runMs }: Situation, cause: Cause): Move {
  return { phase: { name: 'resting', sinceMs: runMs }, cause };
}

function drain({ runMs }: Situation, cause: Cause): Move {
  return { phase: { name: 'emptying', sinceMs: runMs, cause }, cause };
}

function stop({ runMs }: Situation, { cause }: Command): Move {
  return { phase: { name: 'stopped', sinceMs: runMs }, cause };
}

function filled({ sinceMs }: Phase, { runMs }: Situation): Cause {
  return { code: 'filled', values: { filledS: (runMs - sinceMs) / 1000 } };
}

function notEmptying({ state, settings }: Situation): Cause {
  return {
    code: 'not-emptying',
    values: { drainedS: state.water.emptyingMs / 1000, drainTimeS: settings.drainTimeS },
  };
}
