import type { ReasonCode } from '../../../shared-types/reasons.ts';
import { assertNever } from '../assert-never.ts';
import { heldFor } from '../blocks/hold.ts';
import type { Values } from '../known.ts';
import { canEmpty, canRest } from '../pan.ts';
import type { Command, Goal, Situation } from '../situation.ts';
import { wantInDoubt } from './doubt.ts';
import { needsFill, settlingMs } from './timers.ts';
import { trendKS } from './trend.ts';

/** A pan that gained this recently is on its way up, whatever a cloud does [min]; a design choice. */
const leastIdleMin = 5;
/** How long the pan has to be seen cooling towards the store [ms]; a design choice. */
const closingHoldMs = 60_000;
/** A cooling pan no colder than this against the store is emptied before it cools on [K]. */
const leastReturnK = -2;
/** A pan that was emptied for want of gain stays empty for this long [min]. Design choices. */
const leastEmptyMin = 30;

/** What the loop itself would do now for the sake of heat. */
export function want(situation: Situation): Command {
  return wantInDoubt(situation) ?? wantForHeat(situation);
}

function wantForHeat(situation: Situation): Command {
  const { phase } = situation.state;
  switch (phase.name) {
    case 'empty':
      return wantFill(situation);
    case 'resting':
      return needsFill(situation) ? wantFill(situation) : wantFromRest(situation);
    case 'filling':
      return command('run', 'filling-for-heat', {
        filledS: (situation.runMs - phase.sinceMs) / 1000,
        fillTimeS: situation.settings.fillTimeS,
      });
    case 'circulating':
      return wantFromCirculation(situation);
    case 'emptying':
    case 'stopped':
      // Both end by their own proofs; this is what the pan waits for once they have.
      return command('rest', 'waiting-start-difference', differences(situation));
    default:
      return assertNever(phase);
  }
}

function command(goal: Goal, code: ReasonCode, values: Values): Command {
  return { goal, cause: { code, values }, urgent: false, by: 'want' };
}

function differences({ facts, settings }: Situation): Values {
  const { differenceK } = facts;
  const { startDifferenceK, stopDifferenceK } = settings;
  return differenceK === null
    ? { startDifferenceK, stopDifferenceK }
    : { differenceK, startDifferenceK, stopDifferenceK };
}

function wantFill({ state: { timers, phase }, facts, settings, runMs }: Situation): Command {
  const { fillDifferenceK, fillDelayS } = settings;
  const { sheetDifferenceK } = facts;
  const values =
    sheetDifferenceK === null ? { fillDifferenceK } : { differenceK: sheetDifferenceK, fillDifferenceK };
  const stay = phase.name === 'resting' ? 'rest' : 'empty';
  if (sheetDifferenceK === null || sheetDifferenceK <= 0) return command(stay, 'waiting-for-sun', values);
  if (timers.fillMs === null) return command(stay, 'waiting-fill-difference', values);
  const emptyMin = (runMs - phase.sinceMs) / 60_000;
  if (phase.name === 'empty' && phase.afterNoGain && emptyMin < leastEmptyMin)
    return command(stay, 'waiting-after-emptying', { emptyMin, leastEmptyMin });
  const heldS = (runMs - timers.fillMs) / 1000;
  if (!heldFor(timers.fillMs, runMs, fillDelayS * 1000) || !facts.differenceIsGood)
    return command(stay, 'waiting-fill-delay', { ...values, heldS, fillDelayS });
  return command('run', 'filling-for-heat', values);
}

function wantFromCirculation(situation: Situation): Command {
  const { state, site, settings, runMs } = situation;
  const { timers, phase } = state;
  const values = differences(situation);
  if (heldFor(timers.stopMs, runMs, settings.stopDelayS * 1000))
    return canRest(site)
      ? command('rest', 'resting-no-gain', values)
      : command('empty', 'emptying-no-gain', values);
  const leftS = (phase.sinceMs + settlingMs(situation) - runMs) / 1000;
  return leftS > 0
    ? command('run', 'circulating-least-on', { leftS })
    : command('run', 'circulating-for-heat', values);
}

function wantFromRest(situation: Situation): Command {
  const { state, facts, site, settings, runMs } = situation;
  const { timers, gain } = state;
  const values = differences(situation);
  if (heldFor(timers.startMs, runMs, settings.startDelayS * 1000) && facts.differenceIsGood)
    return command('run', 'circulating-for-heat', values);
  if (timers.startMs !== null)
    return command('rest', 'waiting-start-delay', {
      heldS: (runMs - timers.startMs) / 1000,
      startDelayS: settings.startDelayS,
    });
  const idleMin = gain === null ? 0 : (runMs - gain.sinceMs) / 60_000;
  const idle = { ...values, idleMin, emptyAfterMin: settings.emptyAfterMin };
  const closing = idleMin >= leastIdleMin && heldFor(timers.closingMs, runMs, closingHoldMs);
  if (canEmpty(site) && (closing || idleMin >= settings.emptyAfterMin)) {
    return coolsStore(situation)
      ? command('rest', 'resting-colder-than-store', idle)
      : command('empty', 'emptying-no-gain', idle);
  }
  return idleMin < settings.emptyAfterMin / 2
    ? command('rest', 'waiting-start-difference', values)
    : command('rest', 'resting-no-gain', idle);
}

/** True when emptying the pan now would cool the store, and waiting may yet warm the pan. */
function coolsStore(situation: Situation): boolean {
  const { differenceK } = situation.facts;
  if (differenceK === null || differenceK >= 0) return false;
  const trend = trendKS(situation);
  return trend === null || trend >= 0 || differenceK < leastReturnK;
}
