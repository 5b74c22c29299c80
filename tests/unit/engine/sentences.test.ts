import { describe, expect, it } from 'vitest';
import { alarmText } from '../../../controller/engine/explain/alarm-text.ts';
import { answerText } from '../../../controller/engine/explain/answer-text.ts';
import { againstStore, duration, figure } from '../../../controller/engine/explain/figure.ts';
import { reasonText } from '../../../controller/engine/explain/reason-text.ts';
import type { AlarmCode } from '../../../shared-types/alarms.ts';
import type { Answer } from '../../../shared-types/engine.ts';
import type { ReasonCode } from '../../../shared-types/reasons.ts';

type Numbers = Readonly<Record<string, number>>;

/** Each sentence, with numbers of which no two are alike. */
const reasons: readonly (readonly [ReasonCode, Numbers, string])[] = [
  ['waiting-for-sun', {}, 'Waiting for sun: the sheet is no warmer than the store bottom.'],
  [
    'waiting-fill-difference',
    { differenceK: 3.26, fillDifferenceK: 4.26 },
    'The empty sheet is 3.3 K above the store bottom; the pan is filled at 4.3 K.',
  ],
  [
    'waiting-start-difference',
    { differenceK: 3.26, startDifferenceK: 4.26 },
    'The full pan is 3.3 K above the store bottom; the pump starts at 4.3 K.',
  ],
  [
    'waiting-fill-delay',
    { heldS: 50, fillDelayS: 87 },
    'Warm enough to fill for 50 s; the pan is filled after 87 s.',
  ],
  [
    'waiting-start-delay',
    { heldS: 50, startDelayS: 87 },
    'Warm enough to start for 50 s; the pump starts after 87 s.',
  ],
  [
    'waiting-stop-delay',
    { differenceK: -0.4, heldS: 300, stopDelayS: 900 },
    'Hardly any heat comes home: the pan is 0.4 K below the store bottom. The pump stops when that has held for 15 min; it has for 5 min.',
  ],
  ['waiting-least-off', { offS: 50, leastOffS: 87 }, 'The pump has stood for 50 s; it may start after 87 s.'],
  [
    'waiting-starts-per-hour',
    { starts: 7, startsPerHour: 8 },
    'The pump has started 7 times this hour; 8 are allowed.',
  ],
  [
    'waiting-after-emptying',
    { emptyMin: 7, leastEmptyMin: 8 },
    'Emptied for want of gain 7 min ago; the pan is filled after 8 min.',
  ],
  ['waiting-fills-per-day', { fills: 7, fillsPerDay: 8 }, 'The pan was filled 7 times today; 8 are allowed.'],
  [
    'waiting-worth-filling',
    { comingKWh: 0.126, costKWh: 1.126 },
    'A fill would bring 0.13 kWh in the coming hour; it costs 1.13 kWh.',
  ],
  ['start-up-proving', {}, 'The pan counts as full until it is proven empty or full.'],
  [
    'filling-for-heat',
    { filledS: 50, fillTimeS: 87, differenceK: 5.26 },
    'Filling the pan for 50 s of about 87 s.',
  ],
  [
    'circulating-for-heat',
    { differenceK: 3.26, stopDifferenceK: 4.26 },
    'Bringing heat home: the pan is 3.3 K above the store bottom; the pump stops at 4.3 K.',
  ],
  ['circulating-least-on', { leftS: 50 }, 'The pump runs on for 50 s, its least time.'],
  [
    'resting-no-gain',
    { differenceK: 3.26, startDifferenceK: 4.26 },
    'Resting: the pan is 3.3 K above the store bottom; the pump starts at 4.3 K.',
  ],
  [
    'resting-colder-than-store',
    { differenceK: 3.26 },
    'Resting: the pan is 3.3 K above the store bottom; emptying it now would cool the store.',
  ],
  [
    'resting-through-gap',
    { lostKWh: 0.126, costKWh: 1.126 },
    'Waiting for the sun to come back: the pan has lost 0.13 kWh; a refill costs 1.13 kWh.',
  ],
  [
    'circulating-through-gap',
    { lostKWh: 0.126, costKWh: 1.126 },
    'Running on until the sun is back: the pan has lost 0.13 kWh; a refill costs 1.13 kWh.',
  ],
  [
    'warming-batch',
    { panC: 31.26, batchTemperatureC: 40 },
    'Warming a batch: the pan is at 31.3 °C; its water goes home at 40.0 °C.',
  ],
  [
    'sending-batch-home',
    { differenceK: 19.26 },
    'Emptying: the batch is warm, 19.3 K above the store bottom; it goes home as a whole.',
  ],
  [
    'emptying-no-gain',
    { idleMin: 7, differenceK: 4.26 },
    'Emptying: the pan has gained nothing for 7 min; its heat comes home.',
  ],
  [
    'difference-doubted',
    { differenceK: 3.26 },
    'A sensor of pan or store bottom is in doubt: the pan reads 3.3 K above the store bottom; nothing is harvested on its word.',
  ],
  ['emptied', { emptiedS: 50 }, 'The pan is proven empty after 50 s.'],
  ['filled', { filledS: 50 }, 'The pan is full after 50 s; the pump runs on.'],
  [
    'cooling-store',
    { storeC: 4.26, nightCoolingFloorC: 5.26 },
    'Cooling the store through the pan: its bottom is at 4.3 °C; this ends at 5.3 °C.',
  ],
  ['exercising-pump', { idleH: 7 }, 'The pump turns briefly after it has stood for 7 h.'],
  ['operator-run', { leftMin: 7 }, 'An operator asked for the pump, for another 7 min.'],
  ['operator-empty', { leftMin: 7 }, 'An operator asked for an empty pan, for another 7 min.'],
  ['operator-rest', { leftMin: 7 }, 'An operator asked for rest, for another 7 min.'],
  ['commissioning-emptying', {}, 'Commissioning run: the pan is emptied first.'],
  ['commissioning-filling', {}, 'Commissioning run: the pan is filled, and the time is taken.'],
  ['commissioning-flowing', {}, 'Commissioning run: water goes round until pump and sensors can be judged.'],
  ['commissioning-draining', {}, 'Commissioning run: the pan empties, and the time is taken.'],
  [
    'frost-measured',
    { panC: 4.26, frostTemperatureC: 5.26 },
    'Frost protection: the pan is at 4.3 °C; it acts at 5.3 °C.',
  ],
  [
    'frost-trend',
    { panC: 4.26, fallKH: 8, dangerMin: 9 },
    'Frost protection: the pan is at 4.3 °C and falls by 8.0 K an hour; it would be at 1 °C in 9 min.',
  ],
  [
    'frost-blind',
    { ambientC: 4.26, blindFrostAmbientC: 5.26 },
    'Frost protection: no pan sensor works and the air is at 4.3 °C; it acts at 5.3 °C.',
  ],
  [
    'frost-all-sensors-failed',
    {},
    'Frost protection: neither pan nor air can be measured, and frost is possible at this time of the year.',
  ],
  [
    'frost-waiting-release',
    { frostReleaseC: 4.26, heldMin: 8, frostReleaseMin: 9 },
    'After frost: the pan has held 4.3 °C for 8 of 9 min.',
  ],
  [
    'frost-predicted',
    { nightC: 4.26, frostNightC: 5.26 },
    "Frost protection: a sheet under this night's sky falls to 4.3 °C; no water is left in the pan at 5.3 °C or below.",
  ],
  [
    'frost-season',
    { panC: 4.26 },
    'Frost season, the pan at 4.3 °C: a pan that cannot be emptied is not filled.',
  ],
  [
    'store-at-frost',
    { storeC: 4.26, frostTemperatureC: 5.26 },
    'The store bottom is at 4.3 °C; no water is moved until it is 1 K above 5.3 °C.',
  ],
  [
    'store-limit',
    { storeC: 4.26, storeLimitC: 5.26 },
    'The store is at 4.3 °C; no more heat is brought from 5.3 °C on.',
  ],
  [
    'liner-heat',
    { panC: 4.26, linerHotC: 5.26 },
    'Cooling the liner: the pan is at 4.3 °C; it is too hot from 5.3 °C on.',
  ],
  [
    'dumping-heat',
    { storeC: 60.26, panC: 4.26, linerHotC: 5.26 },
    'Dumping heat: the store takes no more at 60.3 °C, and the pan is at 4.3 °C; the liner is hot from 5.3 °C on.',
  ],
  ['dry-running', { dryS: 50 }, 'The pump moved no water for 50 s and was stopped.'],
  [
    'no-flow',
    { excessK: 3.26 },
    'No water moves: the pan stands 3.3 K above the water that the pump draws, and the pump was stopped.',
  ],
  [
    'pump-runs-on',
    { runS: 50 },
    'The pump runs although it is off, for 50 s now; the drain is kept shut where there is a valve.',
  ],
  ['reservoir-low', { levelMm: 7, neededMm: 8 }, 'The reservoir stands at 7 mm; a fill needs 8 mm.'],
  [
    'drain-stands-open',
    { openS: 50 },
    'The pump ran for 50 s while the device says that the drain stands open, and was stopped.',
  ],
  ['water-lost', { levelMm: 7 }, 'The pan lost its water; 7 mm are left.'],
  ['fill-failed', { fillTimeoutS: 50 }, 'The pan was not proven full within 50 s.'],
  [
    'fill-failed-locked',
    { failures: 7 },
    'Locked after 7 failures in a row; an operator has to ask for automatic.',
  ],
  [
    'not-emptying',
    { drainedS: 50, drainTimeS: 87 },
    'The pan is not proven empty after 50 s; it should take 87 s.',
  ],
  ['internal-error', {}, 'The control logic failed at this step; the outputs are safe.'],
  ['drain-open-when-empty', {}, 'The drain stands open while the pan is empty.'],
  ['drain-open-to-empty', {}, 'The drain stands open so that the pan runs empty.'],
  ['drain-closed-to-hold', {}, 'The drain is closed to hold the water.'],
  ['drain-pump-runs', {}, 'The drain pump runs so that the pan becomes empty.'],
  ['drain-pump-off', {}, 'The drain pump is off.'],
  ['pump-off-while-emptying', {}, 'The pump stands while the pan runs empty.'],
  ['pump-off-when-empty', {}, 'The pump stands while the pan is empty.'],
  ['pump-fills', {}, 'The pump fills the pan.'],
  ['output-not-fitted', {}, 'This loop has no such output.'],
  [
    'waiting-fill-difference',
    { differenceK: -0.26, fillDifferenceK: 8 },
    'The empty sheet is 0.3 K below the store bottom; the pan is filled at 8.0 K.',
  ],
  [
    'filling-for-heat',
    { differenceK: 12.5, fillDifferenceK: 8 },
    'Filling: the sheet is 12.5 K above the store bottom.',
  ],
  [
    'emptying-no-gain',
    { differenceK: 1.5 },
    'Emptying: the pan is only 1.5 K above the store bottom; its heat comes home.',
  ],
  [
    'sensors-failed',
    { storeFailed: 1, panFailed: 0 },
    'The store bottom cannot be measured; the loop is kept safe.',
  ],
  ['sensors-failed', { storeFailed: 0, panFailed: 1 }, 'The pan cannot be measured; the loop is kept safe.'],
  ['water-lost', {}, 'The pan lost its water.'],
];

const alarms: readonly (readonly [AlarmCode, Numbers, string | undefined, string])[] = [
  ['frost-danger', { panC: 0.26 }, undefined, 'Frost, and water in the pan. The pan is at 0.3 °C.'],
  ['frost-danger', {}, undefined, 'Frost, and water in the pan.'],
  ['not-emptying', { levelMm: 31.6 }, undefined, 'The pan does not empty. 32 mm of water stand in it.'],
  ['not-emptying', {}, undefined, 'The pan does not empty.'],
  ['fill-locked', { failures: 2 }, undefined, 'The loop is locked. 2 failures in a row.'],
  [
    'liner-hot',
    { panC: 71.4, linerHotC: 69.6 },
    undefined,
    'The liner is close to its limit. The pan is at 71 °C; too hot from 70 °C on.',
  ],
  [
    'store-hot',
    { storeC: 81.4, maximumC: 79.6 },
    undefined,
    'The store is as hot as it may be. It is at 81 °C; 80 °C is the most it stands.',
  ],
  ['sensor-failed', { sensors: 1 }, 'Air', 'A sensor failed: Air.'],
  ['output-not-followed', {}, 'pump', 'The device does not do what it is told: pump.'],
];

const answers: readonly (readonly [Answer['code'], string])[] = [
  ['accepted', 'Accepted.'],
  ['expired', 'Refused: the request took too long to arrive.'],
  ['from-the-future', 'Refused: the clock of the asking side is ahead.'],
  ['repeated', 'Refused: this request was already heard.'],
  ['retained', 'Refused: a request must not be retained by the broker.'],
  ['malformed', 'Refused: this is not a request that can be understood.'],
  ['hazard-forbids', 'Refused: a protection forbids this now.'],
  ['not-possible-here', 'Refused: this loop cannot do that.'],
  ['nothing-to-do', 'Nothing to do: it is so already.'],
  ['settings-refused', 'Refused: the settings break a rule.'],
  ['no-such-alarm', 'Refused: there is no such alarm now.'],
];

describe('the sentence', () => {
  it.each(reasons)('of the reason %s with %j', (code, values, sentence) => {
    expect(reasonText(code, values)).toBe(sentence);
  });

  it.each(alarms)('of the alarm %s with %j and %s', (code, values, detail, sentence) => {
    expect(alarmText(code, values, detail)).toBe(sentence);
  });

  it.each(answers)('of the answer %s', (code, sentence) => {
    expect(answerText(code)).toBe(sentence);
  });
});

describe('a figure', () => {
  it('has one decimal unless it is told otherwise, and is open where nobody knows it', () => {
    expect(figure({ panC: 1.25 }, 'panC')).toBe('1.3');
    expect(figure({ panC: 1.25 }, 'panC', 0)).toBe('1');
    expect(figure({}, 'panC')).toBe('?');
    expect(figure({ panC: Number.NaN }, 'panC')).toBe('?');
    expect(figure({ panC: Number.POSITIVE_INFINITY }, 'panC')).toBe('?');
  });

  it('stands above the store bottom from 0 K on, and below it with its sign said in words', () => {
    expect(againstStore({ differenceK: 0 }, 'differenceK')).toBe('0.0 K above the store bottom');
    expect(againstStore({ differenceK: -0.06 }, 'differenceK')).toBe('0.1 K below the store bottom');
    expect(againstStore({}, 'differenceK')).toBe('? K above the store bottom');
  });

  it('of a time is in seconds under two minutes, else in minutes', () => {
    expect(duration({ heldS: 119.4 }, 'heldS')).toBe('119 s');
    expect(duration({ heldS: 120 }, 'heldS')).toBe('2 min');
    expect(duration({ heldS: 5399 }, 'heldS')).toBe('90 min');
    expect(duration({}, 'heldS')).toBe('?');
  });
});
