import type {
  CommissioningCheck,
  CommissioningResult,
  CommissioningStep,
} from '../../../shared-types/commissioning.ts';

const steps: Readonly<Record<CommissioningStep, string>> = {
  emptying: 'Empty the pan',
  filling: 'Fill it and take the time',
  flowing: 'Let water go round and compare the sensors',
  draining: 'Empty it and take the time',
  done: 'Done',
  ended: 'Broken off',
};

const checks: Readonly<Record<CommissioningCheck, string>> = {
  'fill-time': 'Fill time',
  'pump-direction': 'Direction of the pump',
  'sensors-agree': 'Sensors in the same water',
  'drain-time': 'Drain time',
  'outputs-follow': 'Device does as told',
  'outputs-drop': 'Outputs drop by themselves',
};

const results: Readonly<Record<CommissioningResult, string>> = {
  passed: 'passed',
  failed: 'failed',
  'by-hand': 'look yourself',
};

/** Words of the guided run that gets to know a new or mended loop. */
export const commissioningText = {
  heading: 'Commissioning run',
  lead: 'Gets to know a new or mended loop: fills the pan, lets water go round, empties it, and keeps both times. Protections stay in force and end the run when one of them acts.',
  best: 'Best before dawn of a night without frost: in the dark the outlet can be compared as well.',
  steps,
  stepStates: { before: 'done', now: 'now', after: 'to come' },
  stepList: 'Steps of the run',
  checks,
  results,
  before: 'Before it starts',
  cautions: [
    'The pump starts and stops by itself, drain valve or drain pump move, and water runs to the pan and back.',
    'A leak shows itself at the first fill. Know how to cut the pump’s power and how to shut the water off.',
    'The full pan loads the roof. Water of a warm pan may be hot at pipes and drain.',
  ],
  ready: 'I have made sure',
  readiness: {
    present: 'Somebody stands at the loop and sees pan, pipes and store.',
    clear: 'Nobody works at pump, valves, pipes or wiring, and all covers are closed.',
    weather: 'No frost is near, and the roof carries the full pan.',
  },
  tickFirst: 'The button waits for all three.',
  start: {
    button: 'Start the run',
    says: 'The controller takes the pan through all steps, for an hour or more, and then goes back to automatic.',
    consequence:
      'Pump and drain move without further asking. What it measures replaces the fill and drain times that were set.',
  },
  stop: {
    button: 'Break the run off',
    says: 'Ends the run now; the controller goes back to automatic.',
    consequence: 'What was found so far is kept. Water that is in the pan stays there if automatic wants it.',
  },
  underWay: (left: string) => `Under way. It ends by itself within ${left}.`,
  asks: {
    full: 'Watch the pan. As soon as the water reaches its outlet, press the button: this instant is kept as the end of the fill.',
    empty:
      'Watch the pan. As soon as only a film is left, press the button: this instant is kept as the end of emptying.',
  },
  confirms: { full: 'The pan is full', empty: 'The pan is empty' },
  asked: { commission: 'Start the run', confirm: 'What you saw', automatic: 'Break the run off' },
  busy: (what: string) => `Something else was asked for and still holds: ${what}. The run takes its place.`,
  findings: 'What was found',
  noFindings: 'Nothing was judged yet.',
  never: 'No run is known of this loop.',
  earlier: 'Runs in the log',
  counts: (passed: number, failed: number, byHand: number) =>
    `${passed} passed, ${failed} failed, ${byHand} to look at yourself`,
} as const;
