import type { AlarmCode, AlarmPriority } from './alarms.ts';

/**
 * What each alarm means and asks of a person. Plain data without a library behind it, so that the
 * engine may use it at run time.
 *
 * Delays and priorities are design choices; the form follows the rationalisation of IEC 62682
 * (cause, consequence, response, time to respond), from memory.
 */
export interface AlarmMeaning {
  readonly priority: AlarmPriority;
  readonly title: string;
  readonly consequence: string;
  readonly response: string;
  readonly howSoon: string;
  /** How long its condition has to hold, or to be gone, before the alarm follows [s]. */
  readonly onDelayS: number;
  readonly offDelayS: number;
  /** Alarms that explain this one, the likeliest first. */
  readonly causes: readonly AlarmCode[];
  /** Announced even beside a cause that is announced already: it asks for an act of its own. */
  readonly besideCauses?: true;
}

export const alarmCatalogue: Readonly<Record<AlarmCode, AlarmMeaning>> = {
  'frost-danger': {
    priority: 'urgent',
    title: 'Frost, and water in the pan',
    consequence: 'Water that freezes in the pan can tear the liner and burst the pipes.',
    response: 'Empty the pan by hand, or keep the pump running with warm water in the store.',
    howSoon: 'Within minutes, before the water reaches 0 °C.',
    onDelayS: 0,
    offDelayS: 60,
    causes: ['not-emptying'],
    besideCauses: true,
  },
  'not-emptying': {
    priority: 'urgent',
    title: 'The pan does not empty',
    consequence: 'The pan cannot be protected from frost, and its heat is lost.',
    response: 'Look for a stuck drain valve or a blocked pipe; open the drain by hand.',
    howSoon: 'Within the hour when frost is possible, else within the day.',
    onDelayS: 0,
    offDelayS: 60,
    causes: ['output-not-followed'],
    besideCauses: true,
  },
  'internal-error': {
    priority: 'urgent',
    title: 'The control logic failed',
    consequence: 'The outputs are safe and nothing is harvested.',
    response: 'Restart the controller; keep the log and report the fault.',
    howSoon: 'Within the day.',
    onDelayS: 0,
    offDelayS: 600,
    causes: [],
  },
  'all-sensors-silent': {
    priority: 'soon',
    title: 'No sensor can be heard',
    consequence: 'The loop is blind: it is kept safe and harvests nothing.',
    response: 'Check the power of the device on the roof and the link to it.',
    howSoon: 'Within the day.',
    onDelayS: 60,
    offDelayS: 30,
    causes: [],
  },
  'pan-sensors-failed': {
    priority: 'soon',
    title: 'The pan cannot be measured',
    consequence: 'Frost is judged from the air alone, and nothing is harvested.',
    response: 'Check the temperature sensors of the pan and their wires.',
    howSoon: 'Within the day.',
    onDelayS: 30,
    offDelayS: 60,
    causes: ['all-sensors-silent'],
  },
  'store-sensor-failed': {
    priority: 'soon',
    title: 'The store bottom cannot be measured',
    consequence: 'Nothing is harvested, since gain and store limit cannot be judged.',
    response: 'Check the temperature sensor at the bottom of the store and its wire.',
    howSoon: 'Within the day.',
    onDelayS: 30,
    offDelayS: 60,
    causes: ['all-sensors-silent'],
  },
  'sensor-failed': {
    priority: 'when-convenient',
    title: 'A sensor failed',
    consequence: 'The loop goes on with what it has left; some figures are missing or estimated.',
    response: 'Check the named sensors and their wires.',
    howSoon: 'At the next visit.',
    onDelayS: 120,
    offDelayS: 120,
    causes: ['all-sensors-silent', 'pan-sensors-failed'],
  },
  'sensor-doubtful': {
    priority: 'soon',
    title: 'A sensor cannot be right',
    consequence: 'Nothing is harvested where pan and store bottom cannot be compared without it.',
    response:
      'Check that the named sensors sit where they should, are not swapped, and show what a hand thermometer shows.',
    howSoon: 'Within the day.',
    onDelayS: 60,
    offDelayS: 600,
    causes: ['all-sensors-silent'],
  },
  'fill-locked': {
    priority: 'soon',
    title: 'The loop is locked',
    consequence: 'Nothing is harvested until a person sets the loop to automatic.',
    response: 'Find why filling or running failed, mend it, then ask for automatic.',
    howSoon: 'Within the day.',
    onDelayS: 0,
    offDelayS: 0,
    causes: ['dry-running', 'drain-stands-open', 'fill-failed', 'water-lost'],
    besideCauses: true,
  },
  'fill-failed': {
    priority: 'soon',
    title: 'The pan was not filled in time',
    consequence: 'Heat is not gathered; a second failure locks the loop.',
    response: 'Check the water in the store, the pump and the valves in the pipe to the pan.',
    howSoon: 'Within the day.',
    onDelayS: 0,
    offDelayS: 0,
    causes: ['output-not-followed'],
  },
  'dry-running': {
    priority: 'soon',
    title: 'The pump moved no water',
    consequence: 'The pump was stopped so that it is not ruined; a second time locks the loop.',
    response: 'Check the water in the store, air in the suction pipe, closed valves and the pump.',
    howSoon: 'Within the day.',
    onDelayS: 0,
    offDelayS: 0,
    causes: ['output-not-followed'],
  },
  'drain-stands-open': {
    priority: 'soon',
    title: 'The drain stays open while the pump runs',
    consequence: 'The pump was stopped, since its water ran away; a second time locks the loop.',
    response: 'Look for a drain valve that does not close, and check its wires.',
    howSoon: 'Within the day.',
    onDelayS: 0,
    offDelayS: 0,
    causes: ['output-not-followed'],
  },
  'water-lost': {
    priority: 'soon',
    title: 'The pan lost its water',
    consequence: 'Water may run onto the roof; a second time locks the loop.',
    response: 'Look for a leaking liner, an open drain or a broken pipe.',
    howSoon: 'Within hours.',
    onDelayS: 0,
    offDelayS: 0,
    causes: ['output-not-followed'],
  },
  'liner-hot': {
    priority: 'soon',
    title: 'The liner is close to its limit',
    consequence: 'A liner that gets too hot softens, ages and leaks.',
    response: 'Shade or wet the sheet; draw hot water so that the store can take heat.',
    howSoon: 'Within the hour.',
    onDelayS: 60,
    offDelayS: 120,
    causes: ['liner-not-cooled', 'store-hot', 'dry-running', 'fill-failed'],
    besideCauses: true,
  },
  'liner-not-cooled': {
    priority: 'urgent',
    title: 'The liner is at its limit and nothing cools it',
    consequence: 'A liner that gets too hot softens, ages and leaks; there is no water moving to cool it.',
    response: 'Shade or wet the sheet at once; then find why the pump does not run, or draw hot water.',
    howSoon: 'Within minutes.',
    onDelayS: 120,
    offDelayS: 120,
    causes: ['store-hot', 'fill-locked', 'dry-running', 'fill-failed'],
    besideCauses: true,
  },
  'store-hot': {
    priority: 'soon',
    title: 'The store is as hot as it may be',
    consequence: 'Hot water scalds, and a hotter store takes harm.',
    response: 'Draw hot water with care; keep people away from unmixed taps.',
    howSoon: 'Within the hour.',
    onDelayS: 60,
    offDelayS: 120,
    causes: [],
  },
  'scald-caution': {
    priority: 'when-convenient',
    title: 'The water in the store scalds',
    consequence: 'Water of 60 °C burns the skin within some five seconds.',
    response: 'Make sure that a mixing valve stands between store and taps and holds what it is set to.',
    howSoon: 'Before anybody draws hot water without it.',
    onDelayS: 600,
    offDelayS: 600,
    causes: ['store-hot'],
  },
  'frost-season-near': {
    priority: 'soon',
    title: 'Frost is near, and water stands in a pan that cannot be emptied by itself',
    consequence: 'Water that freezes in the pan can tear the liner and burst the pipes.',
    response: 'Empty the pan by hand before the first frost, and leave its drain open.',
    howSoon: 'Within days; before the frost season begins.',
    onDelayS: 600,
    offDelayS: 600,
    causes: ['frost-danger'],
  },
  'output-not-followed': {
    priority: 'soon',
    title: 'The device does not do what it is told',
    consequence: 'Pump or drain stand otherwise than the control logic believes.',
    response: 'Check the relays, the wiring, and whether the device is in hand operation.',
    howSoon: 'Within the hour when frost is possible, else within the day.',
    onDelayS: 30,
    offDelayS: 30,
    causes: [],
  },
};
