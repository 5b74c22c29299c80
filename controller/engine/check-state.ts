import { alarmCatalogue } from '../../shared-types/alarm-catalogue.ts';
import { channels } from '../../shared-types/channels.ts';
import {
  amount,
  type Check,
  finiteOrNull,
  flag,
  fraction,
  isListOf,
  isValues,
  powerOrNull,
  record,
  text,
  textOrNull,
} from './checks.ts';
import { isCommission } from './commission/memory.ts';
import { finite } from './input.ts';
import { learntMeaning } from './learnt.ts';
import { isComparisonName } from './sense/doubt/names.ts';
import { type EngineState, stateVersion } from './state.ts';
import { isFlow, isUpkeep } from './watch/memory.ts';

const channelNames: ReadonlySet<string> = new Set(channels);
const alarmNames: ReadonlySet<unknown> = new Set(Object.keys(alarmCatalogue));

const isCause: Check = (value) => {
  const cause = record(value);
  return cause !== null && text(cause['code']) && isValues(cause['values']);
};

const isPhase: Check = (value) => {
  const phase = record(value);
  if (phase === null || !finite(phase['sinceMs'])) return false;
  switch (phase['name']) {
    case 'empty':
      return flag(phase['afterNoGain']);
    case 'circulating':
      return flag(phase['afterFill']);
    case 'emptying':
      return isCause(phase['cause']);
    case 'filling':
    case 'resting':
    case 'stopped':
      return true;
    default:
      return false;
  }
};

const isLearnt: Check = (value) => {
  if (!isValues(value)) return false;
  for (const name in record(value)) if (!Object.hasOwn(learntMeaning, name)) return false;
  return true;
};

const isTotals: Check = (value) => {
  const totals = record(value);
  return (
    totals !== null &&
    amount(totals['heatHomeJ']) &&
    amount(totals['heatLostJ']) &&
    amount(totals['electricityJ']) &&
    amount(totals['pumpRunS']) &&
    amount(totals['starts']) &&
    amount(totals['fills'])
  );
};

const areSamples: Check = (value) => {
  if (!Array.isArray(value)) return false;
  for (let i = 0; i < value.length; i++) {
    const sample = record(value[i]);
    if (sample === null || !finite(sample['value']) || !finite(sample['atMs'])) return false;
  }
  return true;
};

const isChannelMemory: Check = (value) => {
  const memory = record(value);
  return (
    memory !== null &&
    areSamples(memory['recent']) &&
    finite(memory['arrivedMs']) &&
    finite(memory['changedMs']) &&
    amount(memory['scatter']) &&
    amount(memory['unreadable']) &&
    textOrNull(memory['cause'])
  );
};

const isSunClock: Check = (value) => {
  const clock = record(value);
  return (
    clock !== null &&
    finiteOrNull(clock['atMs']) &&
    finiteOrNull(clock['apartMs']) &&
    finite(clock['apartSinceMs'])
  );
};

const isSensing: Check = (value) => {
  const sensing = record(value);
  if (sensing === null) return false;
  for (const name in sensing) if (!channelNames.has(name) || !isChannelMemory(sensing[name])) return false;
  return true;
};

const isDoubt: Check = (value) => {
  const doubt = record(value);
  if (doubt === null) return false;
  const { cause, by } = doubt;
  const causeIsKnown = cause === 'stuck' || cause === 'noisy' || cause === 'disagrees';
  return causeIsKnown && (by === 'itself' || isComparisonName(by)) && finite(doubt['provenMs']);
};

const isRange: Check = (value) => {
  const range = record(value);
  return range !== null && finite(range['lowC']) && finite(range['highC']);
};

/** A record of channels of which each passes. */
function areOfChannels(value: unknown, check: Check): boolean {
  const entries = record(value);
  if (entries === null) return false;
  for (const name in entries) if (!channelNames.has(name) || !check(entries[name])) return false;
  return true;
}

const isEvidence: Check = (value) => {
  if (!isValues(value)) return false;
  for (const name in record(value)) if (!isComparisonName(name)) return false;
  return true;
};

const isWatch: Check = (value) => {
  const watch = record(value);
  return (
    watch !== null &&
    finite(watch['lookedMs']) &&
    finiteOrNull(watch['darkMs']) &&
    isEvidence(watch['evidence']) &&
    areOfChannels(watch['doubts'], isDoubt) &&
    areOfChannels(watch['still'], isRange) &&
    finiteOrNull(watch['nightDewC'])
  );
};

const isAlarmNameOrNull: Check = (value) => value === null || alarmNames.has(value);

const isAlarmMemory: Check = (value) => {
  const alarm = record(value);
  return (
    alarm !== null &&
    finiteOrNull(alarm['changingMs']) &&
    flag(alarm['active']) &&
    flag(alarm['acknowledged']) &&
    finite(alarm['raisedMs']) &&
    finite(alarm['activeSinceMs']) &&
    finiteOrNull(alarm['returnedMs']) &&
    amount(alarm['repeats']) &&
    isAlarmNameOrNull(alarm['head']) &&
    finiteOrNull(alarm['shelvedUntilMs']) &&
    finiteOrNull(alarm['shelvedUntilUtcMs']) &&
    isValues(alarm['values']) &&
    text(alarm['text'])
  );
};

const isAlarms: Check = (value) => {
  const alarms = record(value);
  if (alarms === null) return false;
  for (const name in alarms) if (!alarmNames.has(name) || !isAlarmMemory(alarms[name])) return false;
  return true;
};

const isLevel: Check = (value) =>
  value === 'empty' || value === 'part' || value === 'full' || value === 'unknown';

const isWater: Check = (value) => {
  const water = record(value);
  return (
    water !== null &&
    isLevel(water['level']) &&
    amount(water['drainedMs']) &&
    amount(water['emptyingMs']) &&
    flag(water['overdue']) &&
    finiteOrNull(water['fillStoreC']) &&
    amount(water['fillStoreMs']) &&
    finiteOrNull(water['emptyingPanC']) &&
    finiteOrNull(water['trendC'])
  );
};

const isTimers: Check = (value) => {
  const timers = record(value);
  return (
    timers !== null &&
    finiteOrNull(timers['fillMs']) &&
    finiteOrNull(timers['startMs']) &&
    finiteOrNull(timers['stopMs']) &&
    finiteOrNull(timers['noFlowMs']) &&
    finiteOrNull(timers['drainOpenMs']) &&
    finiteOrNull(timers['losingMs'])
  );
};

const isGain: Check = (value) => {
  if (value === null) return true;
  const gain = record(value);
  return gain !== null && finite(gain['lowC']) && finite(gain['sinceMs']);
};

const isHarvest: Check = (value) => {
  const harvest = record(value);
  return (
    harvest !== null &&
    powerOrNull(harvest['gainW']) &&
    finiteOrNull(harvest['dryC']) &&
    finiteOrNull(harvest['dryTakenWM2']) &&
    amount(harvest['dryClearWM2']) &&
    flag(harvest['drySteady']) &&
    amount(harvest['clearFraction']) &&
    amount(harvest['lostJ']) &&
    flag(harvest['inGap']) &&
    amount(harvest['gaps']) &&
    finiteOrNull(harvest['airMeanC']) &&
    finiteOrNull(harvest['airFellFromC']) &&
    flag(harvest['airCameBack']) &&
    finite(harvest['risingWM2']) &&
    finiteOrNull(harvest['lookedMs']) &&
    finiteOrNull(harvest['hourJ']) &&
    finiteOrNull(harvest['dayJ'])
  );
};

const isOutputs: Check = (value) => {
  const outputs = record(value);
  return (
    outputs !== null &&
    fraction(outputs['pumpFraction']) &&
    flag(outputs['drainOpen']) &&
    flag(outputs['drainPumpOn']) &&
    flag(outputs['exchangerPumpOn']) &&
    (outputs['heatDumpOn'] === undefined || flag(outputs['heatDumpOn']))
  );
};

const isPump: Check = (value) => {
  const pump = record(value);
  return (
    pump !== null && finite(pump['sinceMs']) && isListOf(pump['startsMs'], finite) && flag(pump['exercising'])
  );
};

const isSpeed: Check = (value) => {
  const speed = record(value);
  if (speed === null || !fraction(speed['fraction']) || !finite(speed['movedMs'])) return false;
  const { direction } = speed;
  return direction === -1 || direction === 0 || direction === 1;
};

const isFall: Check = (value) => {
  if (value === null) return true;
  const fall = record(value);
  return (
    fall !== null && finite(fall['sinceMs']) && finite(fall['fromC']) && isListOf(fall['fallsKS'], finite)
  );
};

const isFrost: Check = (value) => {
  const frost = record(value);
  if (frost === null) return false;
  const { latched } = frost;
  const latchedIsKnown =
    latched === null ||
    latched === 'frost-measured' ||
    latched === 'frost-trend' ||
    latched === 'frost-blind';
  return (
    latchedIsKnown &&
    finiteOrNull(frost['warmMs']) &&
    finiteOrNull(frost['keepWarmMs']) &&
    finiteOrNull(frost['nightC']) &&
    flag(frost['storeCold']) &&
    isFall(frost['fall'])
  );
};

const areAirLows: Check = (value) => {
  const lows = record(value);
  return lows !== null && finiteOrNull(lows['todayC']) && isListOf(lows['daysC'], finite);
};

/** A loop without a heat dump has none, and a state from before there were any. */
const isDump: Check = (value) => {
  if (value === undefined) return true;
  const dump = record(value);
  return (
    dump !== null &&
    flag(dump['wanted']) &&
    flag(dump['failed']) &&
    finiteOrNull(dump['sinceMs']) &&
    finiteOrNull(dump['fromC'])
  );
};

const isHeat: Check = (value) => {
  const heat = record(value);
  return (
    heat !== null &&
    flag(heat['storeFull']) &&
    flag(heat['linerHot']) &&
    flag(heat['cooling']) &&
    isDump(heat['dump'])
  );
};

const isFailureCause: Check = (value) =>
  value === null ||
  value === 'dry-running' ||
  value === 'no-flow' ||
  value === 'drain-stands-open' ||
  value === 'fill-failed' ||
  value === 'water-lost';

const isFailure: Check = (value) => {
  const failure = record(value);
  return failure !== null && amount(failure['count']) && isFailureCause(failure['cause']);
};

const isLease: Check = (value) => {
  if (value === null) return true;
  const lease = record(value);
  if (lease === null) return false;
  const { kind } = lease;
  const isKind = kind === 'run-pump' || kind === 'empty' || kind === 'rest' || kind === 'commission';
  const { confirmed } = lease;
  return isKind && finite(lease['untilMs']) && (confirmed === undefined || flag(confirmed));
};

const isOperator: Check = (value) => {
  const operator = record(value);
  return operator !== null && isLease(operator['lease']) && isListOf(operator['seen'], text);
};

const isNight: Check = (value) => {
  if (value === null) return true;
  const night = record(value);
  return night !== null && finite(night['sumKMs']) && amount(night['forMs']);
};

const isMeter: Check = (value) => {
  const meter = record(value);
  return (
    meter !== null &&
    isTotals(meter['total']) &&
    isTotals(meter['dayStart']) &&
    amount(meter['estimatedJ']) &&
    amount(meter['filledL']) &&
    isNight(meter['night']) &&
    powerOrNull(meter['rateW'])
  );
};

/**
 * True for a state of this version, whatever it was before: a file, a message, a stranger's JSON.
 *
 * Every step checks its whole state, so each check above names the fields that it looks at: that costs
 * a fraction of walking through a description of them.
 */
export function isState(value: unknown): value is EngineState {
  const state = record(value);
  return (
    state !== null &&
    state['version'] === stateVersion &&
    amount(state['runMs']) &&
    flag(state['stepped']) &&
    textOrNull(state['localDay']) &&
    isSunClock(state['sunClock']) &&
    isSensing(state['sensing']) &&
    isWatch(state['watch']) &&
    isPhase(state['phase']) &&
    isWater(state['water']) &&
    isTimers(state['timers']) &&
    isGain(state['gain']) &&
    isHarvest(state['harvest']) &&
    isOutputs(state['outputs']) &&
    isPump(state['pump']) &&
    isSpeed(state['speed']) &&
    isFrost(state['frost']) &&
    areAirLows(state['airLows']) &&
    isHeat(state['heat']) &&
    isFlow(state['flow']) &&
    isUpkeep(state['upkeep']) &&
    isFailure(state['failure']) &&
    isCommission(state['commission']) &&
    isOperator(state['operator']) &&
    isMeter(state['meter']) &&
    isAlarms(state['alarms']) &&
    isLearnt(state['learnt'])
  );
}
