import type { Decision, Feedback, PhaseName } from '../../../shared-types/engine.ts';
import type { Site } from '../../../shared-types/site.ts';
import { eachStep, type Invariant, isByHazard, isPumping, isRestart, usable } from './invariant.ts';

export const pumpOnlyWhenPumping: Invariant = {
  name: 'pump-only-when-pumping',
  promise:
    'The pump runs in the phases filling and circulating alone, never against the drain pump, never into a drain valve that is told to be open; the pump of an exchanger runs alone only while no protection decides.',
  exceptions: [],
  watch: eachStep(({ decision }, { site }) => {
    const { outputs, phase } = decision;
    if (outputs.exchangerPumpOn && site.plumbing !== 'reservoir') return 'a pump of no exchanger';
    if (outputs.exchangerPumpOn && !isPumping(decision) && isByHazard(decision))
      return `exchanger pump alone under ${decision.reasons.phase.code}`;
    if (!isPumping(decision)) return;
    if (phase !== 'filling' && phase !== 'circulating') return `pump in ${phase}`;
    if (outputs.drainPumpOn) return 'pump against the drain pump';
    return site.drain === 'drain-valve' && outputs.drainOpen ? 'pump into an open drain' : undefined;
  }),
};

export const pumpLeavesOpenDrain: Invariant = {
  name: 'pump-leaves-open-drain',
  promise:
    'A pump that runs while fresh feedback says that the drain valve is open stands after 10 s, the time of a valve to close.',
  exceptions: [
    'What was seen before the pump was told to start says nothing of the valve that closes with it.',
  ],
  watch: ({ site, settings }) => {
    let openSinceMs: number | null = null;
    return (seen) => {
      const { input, before, state, decision } = seen;
      const { feedback } = input;
      const open =
        site.drain === 'drain-valve' &&
        feedback?.drainOpen === true &&
        feedback.ageMs <= settings.staleAfterS * 1000 &&
        before.outputs.pumpFraction > 0 &&
        state.runMs - feedback.ageMs >= before.pump.sinceMs;
      openSinceMs = open && !isRestart(seen, site) ? (openSinceMs ?? state.runMs) : null;
      const openMs = openSinceMs === null ? 0 : state.runMs - openSinceMs;
      return openMs >= 10_000 && isPumping(decision) ? `into an open drain for ${openMs} ms` : undefined;
    };
  },
};

export const pumpNeverRunsDry: Invariant = {
  name: 'pump-never-runs-dry',
  promise:
    'A circulating pump whose usable flow reading is below a tenth of its rating stands after 20 s, whatever the settings.',
  exceptions: [
    'A filling pump is given 120 s to draw water into empty pipes.',
    'Without a flow reading that can be used nobody sees it.',
  ],
  watch: ({ site }) => {
    let drySinceMs: number | null = null;
    return (seen) => {
      const { input, before, state, decision } = seen;
      const raw = input.readings.flowLMin;
      const flowLMin = raw !== undefined && raw.ageMs <= 100 ? usable(decision, 'flowLMin') : null;
      const running = before.phase.name === 'circulating' && !isRestart(seen, site);
      const dry = running && flowLMin !== null && flowLMin < 0.1 * site.pump.ratedFlowLMin;
      drySinceMs = dry ? (drySinceMs ?? state.runMs) : null;
      const dryMs = drySinceMs === null ? 0 : state.runMs - drySinceMs;
      return dryMs > 20_000 && isPumping(decision) ? `dry for ${dryMs} ms` : undefined;
    };
  },
};

export const timeProvesOnlyWhatDrains: Invariant = {
  name: 'time-proves-only-what-drains',
  promise:
    'A pan is taken for empty without a level only once it has drained for the drain time, since its level was last seen full and not counting the time for which fresh feedback said that its drain valve was shut.',
  exceptions: ['A pan without a drain is emptied by hand, and only a person can say so.'],
  watch: ({ site, settings }) => {
    let drainedMs = 0;
    return (seen) => {
      const { before, input, decision } = seen;
      const draining = isDraining(before.phase.name) && !isRestart(seen, site);
      const shut = site.drain === 'drain-valve' && saysShut(input.feedback, settings.staleAfterS);
      drainedMs =
        draining && !isSeenFull(decision, site) ? drainedMs + (shut ? 0 : (input.elapsedMs ?? 0)) : 0;
      const became = before.water.level !== 'empty' && decision.belief.water === 'empty';
      if (!became || site.drain === 'none' || decision.belief.readings.panLevelMm?.quality === 'good') return;
      return drainedMs < settings.drainTimeS * 1000 ? `taken for empty after ${drainedMs} ms` : undefined;
    };
  },
};

function isDraining(phase: PhaseName): boolean {
  return phase === 'emptying' || phase === 'stopped' || phase === 'empty';
}

function saysShut(feedback: Feedback | null, staleAfterS: number): boolean {
  return feedback?.drainOpen === false && feedback.ageMs <= staleAfterS * 1000;
}

function isSeenFull({ belief }: Decision, site: Site): boolean {
  const level = belief.readings.panLevelMm;
  return level?.quality === 'good' && level.value >= 0.9 * site.pan.waterDepthM * 1000;
}
