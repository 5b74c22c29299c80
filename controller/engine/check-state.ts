import { alarmCatalogue } from '../../shared-types/alarm-catalogue.ts';
import { channels } from '../../shared-types/channels.ts';
import { finite, loose } from './input.ts';
import { type EngineState, stateVersion } from './state.ts';

type Check = (value: unknown) => boolean;

const number: Check = finite;
/** A count or a total. */
const amount: Check = (value) => finite(value) && value >= 0;
const flag: Check = (value) => typeof value === 'boolean';
const text: Check = (value) => typeof value === 'string';
const isRecord = (value: unknown) => typeof value === 'object' && value !== null && !Array.isArray(value);

function oneOf(...allowed: readonly unknown[]): Check {
  return (value) => allowed.includes(value);
}

function orNull(check: Check): Check {
  return (value) => value === null || check(value);
}

function listOf(check: Check): Check {
  return (value) => Array.isArray(value) && value.every(check);
}

function shape(checks: Readonly<Record<string, Check>>): Check {
  const entries = Object.entries(checks);
  return (value) => isRecord(value) && entries.every(([name, check]) => check(loose(value)[name]));
}

function recordOf(check: Check, names?: ReadonlySet<string>): Check {
  return (value) => {
    if (!isRecord(value)) return false;
    return Object.entries(loose(value)).every(([name, inner]) => (names?.has(name) ?? true) && check(inner));
  };
}

const values = recordOf(number);
const cause = shape({ code: text, values });

const phases: Readonly<Record<string, Check>> = {
  empty: shape({ sinceMs: number, afterNoGain: flag }),
  filling: shape({ sinceMs: number }),
  circulating: shape({ sinceMs: number, afterFill: flag }),
  resting: shape({ sinceMs: number }),
  emptying: shape({ sinceMs: number, cause }),
  stopped: shape({ sinceMs: number }),
};

const phase: Check = (value) => {
  const { name } = loose(value);
  return typeof name === 'string' && Object.hasOwn(phases, name) && phases[name]?.(value) === true;
};

const totals = shape({
  heatHomeJ: amount,
  heatLostJ: amount,
  electricityJ: amount,
  pumpRunS: amount,
  starts: amount,
  fills: amount,
});

const channelMemory = shape({
  recent: listOf(shape({ value: number, atMs: number })),
  arrivedMs: number,
  unreadable: amount,
  cause: orNull(text),
});

const alarmMemory = shape({
  changingMs: orNull(number),
  active: flag,
  acknowledged: flag,
  raisedMs: number,
  shelvedUntilMs: orNull(number),
  shelvedUntilUtcMs: orNull(number),
  values,
  text,
});

const state = shape({
  version: oneOf(stateVersion),
  runMs: amount,
  stepped: flag,
  localDay: orNull(text),
  sensing: recordOf(channelMemory, new Set(channels)),
  phase,
  water: shape({
    level: oneOf('empty', 'part', 'full', 'unknown'),
    drainedMs: amount,
    emptyingMs: amount,
    overdue: flag,
    fillStoreC: orNull(number),
    fillStoreMs: amount,
    emptyingPanC: orNull(number),
    trendC: orNull(number),
  }),
  timers: shape({
    fillMs: orNull(number),
    startMs: orNull(number),
    stopMs: orNull(number),
    noFlowMs: orNull(number),
    drainOpenMs: orNull(number),
    closingMs: orNull(number),
  }),
  gain: orNull(shape({ lowC: number, sinceMs: number })),
  outputs: shape({ pumpFraction: amount, drainOpen: flag, drainPumpOn: flag, exchangerPumpOn: flag }),
  pump: shape({ sinceMs: number, startsMs: listOf(number) }),
  frost: shape({
    latched: oneOf(null, 'frost-measured', 'frost-blind'),
    warmMs: orNull(number),
    keepWarmMs: orNull(number),
  }),
  heat: shape({ storeFull: flag, linerHot: flag }),
  failure: shape({
    count: amount,
    cause: oneOf(null, 'dry-running', 'drain-stands-open', 'fill-failed', 'water-lost'),
  }),
  operator: shape({
    lease: orNull(shape({ kind: oneOf('run-pump', 'empty', 'rest'), untilMs: number })),
    seen: listOf(text),
  }),
  meter: shape({ total: totals, dayStart: totals, rateW: orNull(number) }),
  alarms: recordOf(alarmMemory, new Set(Object.keys(alarmCatalogue))),
  learnt: values,
});

/** True for a state of this version, whatever it was before: a file, a message, a stranger's JSON. */
export function isState(value: unknown): value is EngineState {
  return state(value);
}
