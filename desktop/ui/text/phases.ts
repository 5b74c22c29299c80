import type { PhaseName } from '../../../shared-types/engine.ts';
import type { ReasonCode } from '../../../shared-types/reasons.ts';

/** Short names of the phases. */
export const phaseTitles: Readonly<Record<PhaseName, string>> = {
  empty: 'Empty',
  filling: 'Filling',
  circulating: 'Circulating',
  resting: 'Resting',
  emptying: 'Emptying',
  stopped: 'Stopped for safety',
};

/** What the loop does in each phase, for someone who sees the word for the first time. */
export const phaseMeanings: Readonly<Record<PhaseName, string>> = {
  empty: 'The pan is drained. The pump is off.',
  filling: 'The pump fills the pan with water from the store.',
  circulating: 'The pump carries warm water from the pan to the store.',
  resting: 'The pan is full and the pump is off.',
  emptying: 'The water of the pan runs back.',
  stopped: 'Pump off, drain open, until the fault is dealt with.',
};

/** Reasons in short, where the sentence with its numbers is not kept. */
export const reasonTitles: Readonly<Record<ReasonCode, string>> = {
  'waiting-for-sun': 'waiting for the sun',
  'waiting-fill-difference': 'sheet not warm enough to fill',
  'waiting-start-difference': 'pan not warm enough to start',
  'waiting-fill-delay': 'warm enough to fill, making sure',
  'waiting-start-delay': 'warm enough to start, making sure',
  'waiting-least-off': 'the pump has to rest a little longer',
  'waiting-starts-per-hour': 'enough pump starts this hour',
  'waiting-after-emptying': 'emptied a short while ago',
  'waiting-fills-per-day': 'filled often enough today',
  'waiting-worth-filling': 'a fill would not pay',
  'start-up-proving': 'just started, proving the readings',
  'filling-for-heat': 'filling to gather heat',
  'circulating-for-heat': 'bringing heat home',
  'circulating-least-on': 'the pump runs its least time',
  'resting-no-gain': 'nothing to gain at the moment',
  'resting-colder-than-store': 'pan colder than the store',
  'resting-through-gap': 'waiting for the sun to come back',
  'circulating-through-gap': 'running on until the sun is back',
  'emptying-no-gain': 'no more gain, the water comes home',
  emptied: 'emptied',
  filled: 'the pan is full',
  'operator-run': 'a person asked for the pump',
  'operator-empty': 'a person asked to empty',
  'operator-rest': 'a person asked to rest',
  'frost-measured': 'frost measured',
  'frost-blind': 'frost possible, pan sensors failed',
  'frost-all-sensors-failed': 'frost possible, all sensors failed',
  'frost-waiting-release': 'frost over, waiting to be sure',
  'store-at-frost': 'store bottom at frost temperature',
  'store-limit': 'store at its limit',
  'liner-heat': 'liner near its limit',
  'sensors-failed': 'sensors failed',
  'dry-running': 'pump ran without moving water',
  'fill-failed': 'the fill was not proven',
  'fill-failed-locked': 'fills failed repeatedly',
  'not-emptying': 'the pan did not empty',
  'drain-stands-open': 'drain stays open under the pump',
  'water-lost': 'the pan lost its water',
  'internal-error': 'internal error',
  'drain-open-when-empty': 'open while empty',
  'drain-open-to-empty': 'open to empty',
  'drain-closed-to-hold': 'closed to hold the water',
  'drain-pump-runs': 'the drain pump empties the pan',
  'drain-pump-off': 'the drain pump is off',
  'pump-off-while-emptying': 'off while emptying',
  'pump-off-when-empty': 'off while empty',
  'pump-fills': 'fills the pan',
  'output-not-fitted': 'not fitted here',
};
