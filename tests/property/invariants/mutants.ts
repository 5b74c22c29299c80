import { initialState, step } from '../../../controller/engine/index.ts';
import type { Decision, EngineInput } from '../../../shared-types/engine.ts';
import type { RawReadings } from '../../../shared-types/readings.ts';
import type { ReasonCode } from '../../../shared-types/reasons.ts';
import type { Settings } from '../../../shared-types/settings.ts';
import type { Site } from '../../../shared-types/site.ts';
import type { Step } from './invariant.ts';

/** An engine with one thing wrong in it. */
export interface Mutant {
  readonly wrong: string;
  /** Names of the invariants that have to notice. */
  readonly breaks: readonly [string, ...string[]];
  /** A fresh one for each sequence, since some remember what they should not. */
  readonly make: () => Step;
}

/** The engine under other settings than those that it is held to. */
const withSettings = (changes: Partial<Settings>) => (): Step => (state, input, site, settings) =>
  step(state, input, site, { ...settings, ...changes });

/** The engine that hears something else. */
const withInput =
  (change: (input: EngineInput) => EngineInput): (() => Step) =>
  () =>
  (state, input, site, settings) =>
    step(state, change(input), site, settings);

/** The engine whose decision is spoilt on the way out. */
const withDecision =
  (change: (decision: Decision, site: Site, input: EngineInput) => Decision): (() => Step) =>
  () =>
  (state, input, site, settings) => {
    const stepped = step(state, input, site, settings);
    const decision = change(stepped.decision, site, input);
    return { state: { ...stepped.state, outputs: decision.outputs }, decision };
  };

const pumpOn = (decision: Decision): Decision => ({
  ...decision,
  outputs: { ...decision.outputs, pumpFraction: 1 },
});

const without = (readings: RawReadings, channel: keyof RawReadings): RawReadings => {
  const { [channel]: _left, ...others } = readings;
  return others;
};

/** Readings that could not be had are made up. */
function inventOutlet(input: EngineInput): EngineInput {
  const { panOutletC } = input.readings;
  const sound = panOutletC !== undefined && panOutletC.value !== null && panOutletC.fault === undefined;
  return sound ? input : { ...input, readings: { ...input.readings, panOutletC: { value: 90, ageMs: 0 } } };
}

function unspoilt(reading: { readonly value: number | null; readonly ageMs: number } | undefined) {
  return { value: reading?.value ?? 20, ageMs: 0 };
}

/** Remembers, and stops the pump three steps late. */
function lateStop(): Step {
  let late = 0;
  return (state, input, site, settings) => {
    const stepped = step(state, input, site, settings);
    const stops = state.outputs.pumpFraction > 0 && stepped.decision.outputs.pumpFraction === 0;
    late = stops ? late + 1 : 0;
    if (!stops || late > 3) return stepped;
    const outputs = { ...stepped.decision.outputs, pumpFraction: 1 };
    return { state: { ...stepped.state, outputs }, decision: { ...stepped.decision, outputs } };
  };
}

/** Remembers outside its state how often it was asked, and forgets its state now and then. */
function forgetful(): Step {
  let count = 0;
  return (state, input, site, settings) =>
    step(count++ % 40 === 39 ? initialState() : state, input, site, settings);
}

/** Goes on as before where one protection would stop the pump. */
const deafTo = (code: ReasonCode) => (): Step => (state, input, site, settings) => {
  const stepped = step(state, input, site, settings);
  const { decision } = stepped;
  if (decision.reasons.phase.code !== code || state.outputs.pumpFraction === 0) return stepped;
  const { outputs, phase } = state;
  return {
    state: { ...stepped.state, outputs, phase },
    decision: { ...decision, outputs, phase: phase.name },
  };
};

export const mutants: readonly Mutant[] = [
  {
    wrong: 'runs on without water',
    breaks: ['pump-never-runs-dry'],
    make: deafTo('dry-running'),
  },
  {
    wrong: 'runs on into an open drain',
    breaks: ['pump-leaves-open-drain'],
    make: deafTo('drain-stands-open'),
  },
  {
    wrong: 'takes no frost for frost',
    breaks: ['frost-is-answered', 'frost-opens-drain', 'frost-store-stands'],
    make: withSettings({ frostTemperatureC: -100, frostReleaseC: -90 }),
  },
  {
    wrong: 'stops the pump three steps late',
    breaks: ['frost-is-answered', 'protection-stands', 'full-store-takes-nothing', 'blind-is-safe'],
    make: lateStop,
  },
  {
    wrong: 'runs the pump in every phase',
    breaks: ['pump-only-when-pumping', 'protection-stands', 'blind-is-safe', 'restart-is-safe'],
    make: withDecision(pumpOn),
  },
  {
    wrong: 'holds the drain open for ever',
    breaks: ['pump-only-when-pumping', 'outputs-have-reasons'],
    make: withDecision((decision) => ({ ...decision, outputs: { ...decision.outputs, drainOpen: true } })),
  },
  {
    wrong: 'holds the drain shut for ever',
    breaks: ['frost-opens-drain', 'frost-blind-opens-drain', 'blind-is-safe', 'outputs-have-reasons'],
    make: withDecision((decision) => ({ ...decision, outputs: { ...decision.outputs, drainOpen: false } })),
  },
  {
    wrong: 'hears no feedback',
    breaks: ['pump-leaves-open-drain', 'time-proves-only-what-drains'],
    make: withInput((input) => ({ ...input, feedback: null })),
  },
  {
    wrong: 'does not hear its flow meter',
    breaks: ['sound-is-heard'],
    make: withInput((input) => ({ ...input, readings: without(input.readings, 'flowLMin') })),
  },
  {
    wrong: 'takes what is old for new',
    breaks: ['stale-is-not-used'],
    make: () => (state, input, site, settings) => {
      const young = Object.entries(input.readings).map(([channel, raw]) => [channel, { ...raw, ageMs: 0 }]);
      const next = step(state, { ...input, readings: Object.fromEntries(young) }, site, settings);
      return next;
    },
  },
  {
    wrong: 'makes up the store that it cannot read',
    breaks: ['stale-is-not-used'],
    make: withInput((input) => ({
      ...input,
      readings: { ...input.readings, storeBottomC: unspoilt(input.readings.storeBottomC) },
    })),
  },
  {
    wrong: 'does not notice a restart',
    breaks: ['restart-is-safe'],
    make: () => (state, input, site, settings) =>
      step(state, { ...input, elapsedMs: Math.min(input.elapsedMs ?? 5000, 5000) }, site, settings),
  },
  {
    wrong: 'takes what is doubtful for good',
    breaks: ['doubt-starts-nothing'],
    make: withDecision((decision) => {
      const { storeBottomC } = decision.belief.readings;
      if (storeBottomC?.quality !== 'good') return decision;
      const doubted = { ...storeBottomC, quality: 'doubtful', cause: 'jumped' } as const;
      const readings = { ...decision.belief.readings, storeBottomC: doubted };
      return { ...decision, belief: { ...decision.belief, readings } };
    }),
  },
  {
    wrong: 'lets an operator run the pump whatever stands against it',
    breaks: ['operator-overrides-nothing'],
    make: withDecision((decision, _site, { request }) =>
      request?.operation.kind === 'run-pump' ? pumpOn(decision) : decision,
    ),
  },
  {
    wrong: 'obeys a request of any age',
    breaks: ['operator-is-answered'],
    make: withInput((input) => ({
      ...input,
      request: input.request === null ? null : { ...input.request, ageMs: 0 },
    })),
  },
  {
    wrong: 'lets a lease grow by itself',
    breaks: ['lease-ends'],
    make: () => (state, input, site, settings) => {
      const stepped = step(state, input, site, settings);
      const { operator, runMs } = stepped.state;
      if (operator.lease === null) return stepped;
      const lease = { ...operator.lease, untilMs: runMs + 600_000 };
      return { ...stepped, state: { ...stepped.state, operator: { ...operator, lease } } };
    },
  },
  {
    wrong: 'harvests into a full store',
    breaks: ['full-store-takes-nothing'],
    make: () => (state, input, site, settings) =>
      step(
        state,
        input,
        { ...site, store: { ...site.store, maximumC: 200 } },
        { ...settings, storeLimitC: 200 },
      ),
  },
  {
    wrong: 'leaves the heat dump on when the pump stops',
    breaks: ['heat-dump-only-with-flow'],
    make: withDecision((decision, site) =>
      site.heatDump === undefined
        ? decision
        : { ...decision, outputs: { ...decision.outputs, heatDumpOn: true } },
    ),
  },
  {
    wrong: 'sends heat round a full store with the heat dump off',
    breaks: ['full-store-takes-nothing'],
    make: withDecision((decision, site) =>
      site.heatDump === undefined
        ? decision
        : { ...decision, outputs: { ...decision.outputs, heatDumpOn: false } },
    ),
  },
  {
    wrong: 'knows no least times',
    breaks: ['least-times-hold'],
    make: withSettings({ leastOnS: 0, leastOffS: 0 }),
  },
  {
    wrong: 'counts no starts',
    breaks: ['least-times-hold'],
    make: withSettings({ startsPerHour: 1000 }),
  },
  {
    wrong: 'begins its totals anew at a restart',
    breaks: ['totals-never-fall'],
    make: () => (state, input, site, settings) =>
      step(
        input.elapsedMs === null ? { ...state, meter: initialState().meter } : state,
        input,
        site,
        settings,
      ),
  },
  {
    wrong: 'counts heat from an outlet that cannot be read',
    breaks: ['failed-sensor-adds-no-heat'],
    make: () => (state, input, site, settings) => {
      const honest = step(state, input, site, settings);
      const invented = step(state, inventOutlet(input), site, settings);
      return {
        state: { ...honest.state, meter: invented.state.meter },
        decision: { ...honest.decision, meter: invented.decision.meter },
      };
    },
  },
  {
    wrong: 'forgets to say why',
    breaks: ['outputs-have-reasons'],
    make: withDecision((decision) => ({
      ...decision,
      reasons: { ...decision.reasons, drain: { ...decision.reasons.drain, text: '' } },
    })),
  },
  {
    wrong: 'says what is in no list',
    breaks: ['outputs-have-reasons', 'decisions-have-their-shape'],
    make: withDecision((decision) => ({
      ...decision,
      reasons: { ...decision.reasons, pump: { ...decision.reasons.pump, code: 'because' as never } },
    })),
  },
  {
    wrong: 'fails inside',
    breaks: ['outputs-have-reasons'],
    make: () => (state, input, site, settings) =>
      step(state, input, input.localDay === '2031-06-22' ? ({} as Site) : site, settings),
  },
  {
    wrong: 'adds a word that the vocabulary does not know',
    breaks: ['decisions-have-their-shape'],
    make: withDecision((decision) => ({ ...decision, mood: 'good' })),
  },
  {
    wrong: 'remembers outside its state',
    breaks: ['state-survives-json'],
    make: forgetful,
  },
  {
    wrong: 'keeps what JSON does not',
    breaks: ['state-survives-json'],
    make: () => (state, input, site, settings) => {
      const stepped = step(state, input, site, settings);
      return {
        ...stepped,
        state: { ...stepped.state, meter: { ...stepped.state.meter, rateW: Number.NaN } },
      };
    },
  },
  {
    wrong: 'looks at the calendar',
    breaks: ['clock-decides-nothing'],
    make: withDecision((decision) =>
      Math.floor(decision.nowMs / 60_000) % 2 === 0 ? decision : { ...decision, lease: null, phaseForMs: 0 },
    ),
  },
];
