import type {
  CommissioningCheck,
  CommissioningResult,
  CommissioningStep,
} from '../../../shared-types/commissioning.ts';
import type { Values } from '../known.ts';
import { duration, figure } from './figure.ts';

const stepTexts: Readonly<Record<CommissioningStep, string>> = {
  emptying: 'The pan is emptied, so that the fill can be measured.',
  filling: 'The pump fills the pan. Where no sensor shows it, confirm when the pan is full.',
  flowing: 'Water goes round until the sensors have come to rest.',
  draining: 'The pan empties. Where no sensor shows it, confirm when the pan is empty.',
  done: 'The run is done.',
  ended: 'The run was broken off: a protection acted, its time was over, or somebody stopped it.',
};

type Texts = Readonly<Record<CommissioningResult, (v: Values) => string>>;

const findingTexts: Readonly<Record<CommissioningCheck, Texts>> = {
  'fill-time': {
    passed: (v) => `The pan fills in ${duration(v, 'seconds')}.`,
    failed: () => 'The pan was not seen to fill.',
    'by-hand': () => 'The fill time stays as set: nothing showed when the pan was full.',
  },
  'pump-direction': {
    passed: (v) =>
      'flowLMin' in v
        ? `The pump pushes the right way: ${figure(v, 'flowLMin')} L/min.`
        : `The pump pushes the right way: water of the source is at the inlet, ${figure(v, 'apartK')} K off.`,
    failed: (v) =>
      'flowLMin' in v
        ? `The flow is ${figure(v, 'flowLMin')} L/min: look for a pump that turns or stands the wrong way.`
        : `The inlet is ${figure(v, 'apartK')} K off its source: water does not come in there.`,
    'by-hand': () => 'Feel which pipe becomes warm: no sensor shows which way the pump pushes.',
  },
  'sensors-agree': {
    passed: (v) =>
      'offsetK' in v
        ? `In the dark outlet and store bottom agree to ${figure(v, 'offsetK')} K, which is taken off from now on.`
        : `Inlet and source agree to ${figure(v, 'apartK')} K; run again in the dark to compare the outlet.`,
    failed: (v) =>
      'offsetK' in v
        ? `In the dark outlet and store bottom are ${figure(v, 'offsetK')} K apart.`
        : `Inlet and source are ${figure(v, 'apartK')} K apart in the same water.`,
    'by-hand': () => 'Hold the sensors into one bucket of water: no two of them lie in the same water here.',
  },
  'drain-time': {
    passed: (v) => `The pan empties in ${duration(v, 'seconds')}.`,
    failed: (v) => `The pan did not empty: ${figure(v, 'levelMm', 0)} mm are left.`,
    'by-hand': () => 'The drain time stays as set: nothing showed when the pan was empty.',
  },
  'outputs-follow': {
    passed: () => 'The device ran the pump and stood still as it was told.',
    failed: () => 'The device did not do what it was told.',
    'by-hand': () => 'Watch the pump start and stop: the device does not say what it does.',
  },
  'outputs-drop': {
    passed: () => 'The outputs fall safe when nobody renews them.',
    failed: () => 'The outputs stay on when nobody renews them.',
    'by-hand': (v) =>
      `Pull the wire or end the controller while the pump runs: pump and drain have to fall safe within ${duration(v, 'expiryS')}. The controller cannot see that by itself.`,
  },
};

/** What a commissioning run does in a step. */
export function stepText(step: CommissioningStep): string {
  return stepTexts[step];
}

/** What a check of a commissioning run found, with its numbers. */
export function findingText(check: CommissioningCheck, result: CommissioningResult, values: Values): string {
  return findingTexts[check][result](values);
}
