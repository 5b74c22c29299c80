import type { ReasonCode } from '../../../shared-types/reasons.ts';
import type { Values } from '../known.ts';
import { againstStore, duration, figure } from './figure.ts';
import { noFlowKindText } from './no-flow-text.ts';

const texts: Readonly<Record<ReasonCode, (v: Values) => string>> = {
  'waiting-for-sun': () => 'Waiting for sun: the sheet is no warmer than the store bottom.',
  'waiting-fill-difference': (v) =>
    `The empty sheet is ${againstStore(v, 'differenceK')}; the pan is filled at ${figure(v, 'fillDifferenceK')} K.`,
  'waiting-start-difference': (v) =>
    `The full pan is ${againstStore(v, 'differenceK')}; the pump starts at ${figure(v, 'startDifferenceK')} K.`,
  'waiting-fill-delay': (v) =>
    `Warm enough to fill for ${duration(v, 'heldS')}; the pan is filled after ${duration(v, 'fillDelayS')}.`,
  'waiting-start-delay': (v) =>
    `Warm enough to start for ${duration(v, 'heldS')}; the pump starts after ${duration(v, 'startDelayS')}.`,
  'waiting-stop-delay': (v) =>
    `Hardly any heat comes home: the pan is ${againstStore(v, 'differenceK')}. The pump stops when that has held for ${duration(v, 'stopDelayS')}; it has for ${duration(v, 'heldS')}.`,
  'waiting-least-off': (v) =>
    `The pump has stood for ${duration(v, 'offS')}; it may start after ${duration(v, 'leastOffS')}.`,
  'waiting-starts-per-hour': (v) =>
    `The pump has started ${figure(v, 'starts', 0)} times this hour; ${figure(v, 'startsPerHour', 0)} are allowed.`,
  'waiting-after-emptying': (v) =>
    `Emptied for want of gain ${figure(v, 'emptyMin', 0)} min ago; the pan is filled after ${figure(v, 'leastEmptyMin', 0)} min.`,
  'waiting-fills-per-day': (v) =>
    `The pan was filled ${figure(v, 'fills', 0)} times today; ${figure(v, 'fillsPerDay', 0)} are allowed.`,
  'waiting-worth-filling': (v) =>
    `A fill would bring ${figure(v, 'comingKWh', 2)} kWh in the coming hour; it costs ${figure(v, 'costKWh', 2)} kWh.`,
  'start-up-proving': () => 'The pan counts as full until it is proven empty or full.',
  'filling-for-heat': (v) =>
    'filledS' in v
      ? `Filling the pan for ${duration(v, 'filledS')} of about ${duration(v, 'fillTimeS')}.`
      : `Filling: the sheet is ${againstStore(v, 'differenceK')}.`,
  'circulating-for-heat': (v) =>
    `Bringing heat home: the pan is ${againstStore(v, 'differenceK')}; the pump stops at ${figure(v, 'stopDifferenceK')} K.`,
  'circulating-least-on': (v) => `The pump runs on for ${duration(v, 'leftS')}, its least time.`,
  'resting-no-gain': (v) =>
    `Resting: the pan is ${againstStore(v, 'differenceK')}; the pump starts at ${figure(v, 'startDifferenceK')} K.`,
  'resting-colder-than-store': (v) =>
    `Resting: the pan is ${againstStore(v, 'differenceK')}; emptying it now would cool the store.`,
  'resting-through-gap': (v) =>
    `Waiting for the sun to come back: the pan has lost ${figure(v, 'lostKWh', 2)} kWh; a refill costs ${figure(v, 'costKWh', 2)} kWh.`,
  'circulating-through-gap': (v) =>
    `Running on until the sun is back: the pan has lost ${figure(v, 'lostKWh', 2)} kWh; a refill costs ${figure(v, 'costKWh', 2)} kWh.`,
  'warming-batch': (v) =>
    `Warming a batch: the pan is at ${figure(v, 'panC')} °C; its water goes home at ${figure(v, 'batchTemperatureC')} °C.`,
  'sending-batch-home': (v) =>
    `Emptying: the batch is warm, ${againstStore(v, 'differenceK')}; it goes home as a whole.`,
  'emptying-no-gain': (v) =>
    'airFellK' in v
      ? `Emptying: the air has fallen by ${figure(v, 'airFellK')} K, so the weather turns; the pan’s heat comes home.`
      : 'idleMin' in v
        ? `Emptying: the pan has gained nothing for ${figure(v, 'idleMin', 0)} min; its heat comes home.`
        : `Emptying: the pan is only ${againstStore(v, 'differenceK')}; its heat comes home.`,
  'difference-doubted': (v) =>
    `A sensor of pan or store bottom is in doubt${'differenceK' in v ? `: the pan reads ${againstStore(v, 'differenceK')}` : ''}; nothing is harvested on its word.`,
  filled: (v) => `The pan is full after ${duration(v, 'filledS')}; the pump runs on.`,
  emptied: (v) => `The pan is proven empty after ${duration(v, 'emptiedS')}.`,
  'cooling-store': (v) =>
    `Cooling the store through the pan: its bottom is at ${figure(v, 'storeC')} °C; this ends at ${figure(v, 'nightCoolingFloorC')} °C.`,
  'exercising-pump': (v) =>
    'idleH' in v
      ? `The pump turns briefly after it has stood for ${figure(v, 'idleH', 0)} h.`
      : 'The pump turns briefly after it has stood for long.',
  'operator-run': (v) => `An operator asked for the pump, for another ${figure(v, 'leftMin', 0)} min.`,
  'operator-empty': (v) => `An operator asked for an empty pan, for another ${figure(v, 'leftMin', 0)} min.`,
  'operator-rest': (v) => `An operator asked for rest, for another ${figure(v, 'leftMin', 0)} min.`,
  'commissioning-emptying': () => 'Commissioning run: the pan is emptied first.',
  'commissioning-filling': () => 'Commissioning run: the pan is filled, and the time is taken.',
  'commissioning-flowing': () => 'Commissioning run: water goes round until pump and sensors can be judged.',
  'commissioning-draining': () => 'Commissioning run: the pan empties, and the time is taken.',
  'frost-measured': (v) =>
    `Frost protection: the pan is at ${figure(v, 'panC')} °C; it acts at ${figure(v, 'frostTemperatureC')} °C.`,
  'frost-trend': (v) =>
    `Frost protection: the pan is at ${figure(v, 'panC')} °C and falls by ${figure(v, 'fallKH')} K an hour; it would be at 1 °C in ${figure(v, 'dangerMin', 0)} min.`,
  'frost-blind': (v) =>
    `Frost protection: no pan sensor works and the air is at ${figure(v, 'ambientC')} °C; it acts at ${figure(v, 'blindFrostAmbientC')} °C.`,
  'frost-all-sensors-failed': () =>
    'Frost protection: neither pan nor air can be measured, and frost is possible at this time of the year.',
  'frost-waiting-release': (v) =>
    `After frost: the pan has held ${figure(v, 'frostReleaseC')} °C for ${figure(v, 'heldMin', 0)} of ${figure(v, 'frostReleaseMin', 0)} min.`,
  'frost-predicted': (v) =>
    `Frost protection: a sheet under this night's sky falls to ${figure(v, 'nightC')} °C; no water is left in the pan at ${figure(v, 'frostNightC')} °C or below.`,
  'frost-season': (v) =>
    `Frost season${'panC' in v ? `, the pan at ${figure(v, 'panC')} °C` : ''}: a pan that cannot be emptied is not filled.`,
  'store-limit': (v) =>
    `The store is at ${figure(v, 'storeC')} °C; no more heat is brought from ${figure(v, 'storeLimitC')} °C on.`,
  'dumping-heat': (v) =>
    `Dumping heat: the store takes no more at ${figure(v, 'storeC')} °C, and the pan is at ${figure(v, 'panC')} °C; the liner is hot from ${figure(v, 'linerHotC')} °C on.`,
  'store-at-frost': (v) =>
    `The store bottom is at ${figure(v, 'storeC')} °C; no water is moved until it is 1 K above ${figure(v, 'frostTemperatureC')} °C.`,
  'liner-heat': (v) =>
    `Cooling the liner: the pan is at ${figure(v, 'panC')} °C; it is too hot from ${figure(v, 'linerHotC')} °C on.`,
  'sensors-failed': (v) =>
    `${v['storeFailed'] === 1 ? 'The store bottom' : 'The pan'} cannot be measured; the loop is kept safe.`,
  'dry-running': (v) => `The pump moved no water for ${duration(v, 'dryS')} and was stopped${whyNot(v)}.`,
  'no-flow': (v) =>
    `No water moves: the pan stands ${figure(v, 'excessK')} K above the water that the pump draws, and the pump was stopped${whyNot(v)}.`,
  'pump-runs-on': (v) =>
    `The pump runs although it is off, for ${duration(v, 'runS')} now; the drain is kept shut where there is a valve.`,
  'reservoir-low': (v) =>
    `The reservoir stands at ${figure(v, 'levelMm', 0)} mm${'neededMm' in v ? `; a fill needs ${figure(v, 'neededMm', 0)} mm` : ''}.`,
  'drain-stands-open': (v) =>
    `The pump ran for ${duration(v, 'openS')} while the device says that the drain stands open, and was stopped.`,
  'water-lost': (v) =>
    `The pan lost its water${'levelMm' in v ? `; ${figure(v, 'levelMm', 0)} mm are left` : ''}.`,
  'fill-failed': (v) => `The pan was not proven full within ${duration(v, 'fillTimeoutS')}.`,
  'fill-failed-locked': (v) =>
    `Locked after ${figure(v, 'failures', 0)} failures in a row; an operator has to ask for automatic.`,
  'not-emptying': (v) =>
    `The pan is not proven empty after ${duration(v, 'drainedS')}; it should take ${duration(v, 'drainTimeS')}.`,
  'internal-error': () => 'The control logic failed at this step; the outputs are safe.',
  'drain-open-when-empty': () => 'The drain stands open while the pan is empty.',
  'drain-open-to-empty': () => 'The drain stands open so that the pan runs empty.',
  'drain-closed-to-hold': () => 'The drain is closed to hold the water.',
  'drain-pump-runs': () => 'The drain pump runs so that the pan becomes empty.',
  'drain-pump-off': () => 'The drain pump is off.',
  'pump-off-while-emptying': () => 'The pump stands while the pan runs empty.',
  'pump-off-when-empty': () => 'The pump stands while the pan is empty.',
  'pump-fills': () => 'The pump fills the pan.',
  'output-not-fitted': () => 'This loop has no such output.',
};

/** Why no water moved, as far as it was told. */
function whyNot({ noFlowKind = 0 }: Values): string {
  return noFlowKind === 0 ? '' : `: ${noFlowKindText(noFlowKind)}`;
}

/** The sentence of a reason, with its numbers; `?` stands for a number that is not given. */
export function reasonText(code: ReasonCode, values: Values): string {
  return texts[code](values);
}
