import { reviveState } from '../../../controller/engine/index.ts';
import type { Decision } from '../../../shared-types/engine.ts';
import { eachStep, type Invariant, isRestart } from './invariant.ts';

export const stateSurvivesJson: Invariant = {
  name: 'state-survives-json',
  promise:
    'From a state that went through JSON the same input leads to the same decision and the same next state, to the last bit.',
  exceptions: [],
  watch: eachStep(({ before, input, state, decision }, { site, settings, step }) => {
    const saved = JSON.stringify(before);
    const revived = reviveState(JSON.parse(saved));
    if (revived === undefined) return 'a state that cannot be taken up again';
    const again = step(revived, input, site, settings);
    if (JSON.stringify(again.decision) !== JSON.stringify(decision)) return 'another decision after JSON';
    if (JSON.stringify(again.state) !== JSON.stringify(state)) return 'another state after JSON';
    return JSON.stringify(before) === saved ? undefined : 'the step changed the state that it was given';
  }),
};

/** What a decision says of the calendar. */
const labels: ReadonlySet<string> = new Set(['nowMs', 'sinceMs', 'shelvedUntilMs']);

/** A decision without its labels, as text. */
export function withoutLabels(decision: Decision): string {
  return JSON.stringify(decision, (key, value) => (labels.has(key) ? 0 : value));
}

/** How far the calendar clock is moved: back and on, by an hour, by a day, to long ago. */
const jumpsMs = [-1, 3_600_000, -3_600_000, 86_400_000, -86_400_000, -1e12];

export const clockDecidesNothing: Invariant = {
  name: 'clock-decides-nothing',
  promise:
    'A calendar clock that was moved, to either side and by any length, changes nothing in a step but the labels of instants.',
  exceptions: [
    'The local day is an input of its own: with it the totals of the day begin.',
    'After a restart nobody but the calendar can tell where the sun stands; and a calendar that keeps to another time for an hour is believed, since it was set right.',
  ],
  watch: ({ site, settings, step }) => {
    let count = 0;
    return (seen) => {
      if (isRestart(seen, site)) return undefined;
      const { before, input, decision } = seen;
      const jumpMs = jumpsMs[count++ % jumpsMs.length] ?? 0;
      const moved = step(before, { ...input, nowMs: input.nowMs + jumpMs }, site, settings);
      return withoutLabels(moved.decision) === withoutLabels(decision) ? undefined : `moved by ${jumpMs} ms`;
    };
  },
};
