import type { AlarmCode } from '../../shared-types/alarms.ts';
import { type Channel, channels } from '../../shared-types/channels.ts';
import type { EngineInput, Feedback, Totals } from '../../shared-types/engine.ts';
import type { LoggedOutcome, LogRecord } from '../../shared-types/log.ts';
import type { RawReadings, SensorFault } from '../../shared-types/readings.ts';
import {
  dayNumber,
  dayText,
  runOfKey,
  type StepColumn,
  stepColumns,
  stepKey,
  stepOfKey,
  totalNames,
} from './layout.ts';
import type { Words } from './words.ts';

/** What SQLite holds in a cell of a step. */
type Cell = number | string | null;
type Reason = LoggedOutcome['reasons']['phase'];
export type Row = readonly Cell[];

const positionOf = Object.fromEntries(stepColumns.map((column, position) => [column, position])) as Record<
  StepColumn,
  number
>;

/** A step as the cells of its row, in the order of `allColumns`. @param heatTodayJ - Null: not to be told. */
export function rowOf(record: LogRecord, heatTodayJ: number | null, words: Words): Row {
  const { input, outcome } = record;
  const { outputs, reasons } = outcome;
  const cells: Record<StepColumn, Cell> = {
    id: stepKey(record.run, record.step),
    at_ms: input.nowMs,
    day: dayNumber(input.localDay),
    site: record.siteRevision,
    settings: record.settingsRevision,
    elapsed_ms: input.elapsedMs,
    faults: words.numberOf(faultsText(input.readings)),
    feedback_pump: input.feedback?.pumpFraction ?? null,
    feedback_drain: flagCell(input.feedback?.drainOpen ?? null),
    feedback_age_ms: input.feedback?.ageMs ?? null,
    request: input.request === null ? null : JSON.stringify(input.request),
    phase: words.numberOf(outcome.phase),
    pump: outputs.pumpFraction,
    drain_open: flagCell(outputs.drainOpen),
    drain_pump: flagCell(outputs.drainPumpOn),
    exchanger_pump: flagCell(outputs.exchangerPumpOn),
    reason_phase: words.numberOf(reasons.phase),
    reason_pump: words.numberOf(reasons.pump),
    reason_drain: words.numberOf(reasons.drain),
    alarms: words.numberOf(outcome.alarms.join()),
    failed: words.numberOf(outcome.failed.join()),
    ...outcome.total,
    heat_today_j: heatTodayJ,
    heat_dump: flagCell(outputs.heatDumpOn ?? null),
  };
  return [...stepColumns.map((column) => cells[column]), ...channelCells(input.readings)];
}

/** The step that a row holds. @throws RangeError when a word of it is missing. */
export function recordOf(row: Row, words: Words): LogRecord {
  const key = numberAt(row, 'id');
  return {
    step: stepOfKey(key),
    run: runOfKey(key),
    siteRevision: numberAt(row, 'site'),
    settingsRevision: numberAt(row, 'settings'),
    input: inputOf(row, words),
    outcome: outcomeOf(row, words),
  };
}

function inputOf(row: Row, words: Words): EngineInput {
  const request = row[positionOf.request];
  return {
    nowMs: numberAt(row, 'at_ms'),
    elapsedMs: row[positionOf.elapsed_ms] as number | null,
    localDay: dayText(numberAt(row, 'day')),
    readings: readingsOf(row, wordAt(row, 'faults', words)),
    feedback: feedbackOf(row),
    request: typeof request === 'string' ? JSON.parse(request) : null,
  };
}

function outcomeOf(row: Row, words: Words): LoggedOutcome {
  return {
    phase: wordAt(row, 'phase', words) as LoggedOutcome['phase'],
    outputs: {
      pumpFraction: numberAt(row, 'pump'),
      drainOpen: numberAt(row, 'drain_open') === 1,
      drainPumpOn: numberAt(row, 'drain_pump') === 1,
      exchangerPumpOn: numberAt(row, 'exchanger_pump') === 1,
      ...heatDumpOf(row),
    },
    reasons: {
      phase: wordAt(row, 'reason_phase', words) as Reason,
      pump: wordAt(row, 'reason_pump', words) as Reason,
      drain: wordAt(row, 'reason_drain', words) as Reason,
    },
    alarms: listOf(wordAt(row, 'alarms', words)) as AlarmCode[],
    failed: listOf(wordAt(row, 'failed', words)) as Channel[],
    total: totalsAt(row),
  };
}

/** Written out: this runs for every step that is ever read. */
function totalsAt(row: Row): Totals {
  return {
    heatHomeJ: numberAt(row, 'heatHomeJ'),
    heatLostJ: numberAt(row, 'heatLostJ'),
    electricityJ: numberAt(row, 'electricityJ'),
    pumpRunS: numberAt(row, 'pumpRunS'),
    starts: numberAt(row, 'starts'),
    fills: numberAt(row, 'fills'),
  };
}

/** Words of a joined set; none of an empty one. */
export const listOf = (text: string) => (text === '' ? [] : text.split(','));

const numberAt = (row: Row, column: StepColumn) => row[positionOf[column]] as number;
const wordAt = (row: Row, column: StepColumn, words: Words) => words.wordOf(numberAt(row, column));

const flagCell = (flag: boolean | null) => (flag === null ? null : Number(flag));

function feedbackOf(row: Row): Feedback | null {
  const ageMs = row[positionOf.feedback_age_ms];
  if (typeof ageMs !== 'number') return null;
  const drain = row[positionOf.feedback_drain];
  return {
    pumpFraction: numberAt(row, 'feedback_pump'),
    drainOpen: typeof drain === 'number' ? drain === 1 : null,
    ageMs,
  };
}

function heatDumpOf(row: Row): { heatDumpOn?: boolean } {
  const cell = row[positionOf.heat_dump];
  return typeof cell === 'number' ? { heatDumpOn: cell === 1 } : {};
}

function channelCells(readings: RawReadings): Cell[] {
  return channels.flatMap((channel) => [readings[channel]?.value ?? null, readings[channel]?.ageMs ?? null]);
}

const faultsText = (readings: RawReadings) =>
  channels
    .filter((channel) => readings[channel]?.fault !== undefined)
    .map((channel) => `${channel}=${readings[channel]?.fault}`)
    .join();

function readingsOf(row: Row, faultsText: string): RawReadings {
  const readings: RawReadings = {};
  let at = stepColumns.length;
  for (const channel of channels) {
    const value = row[at] as number | null | undefined;
    const ageMs = row[at + 1];
    at += 2;
    if (typeof ageMs === 'number') readings[channel] = { value: value ?? null, ageMs };
  }
  return faultsText === '' ? readings : withFaults(readings, faultsText);
}

function withFaults(readings: RawReadings, faultsText: string): RawReadings {
  for (const pair of listOf(faultsText)) {
    const [channel, fault] = pair.split('=') as [Channel, SensorFault];
    const reading = readings[channel];
    if (reading !== undefined) readings[channel] = { ...reading, fault };
  }
  return readings;
}

/** Totals of a row, each column asked for by its name. */
export function totalsOf(read: (name: keyof Totals) => unknown): Totals {
  return Object.fromEntries(totalNames.map((name) => [name, Number(read(name))])) as Totals;
}
