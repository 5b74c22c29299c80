import type { Feedback, Outputs } from '../../../shared-types/engine.ts';
import type { Site } from '../../../shared-types/site.ts';
import type { NumberFormats } from '../format/numbers.ts';
import { en } from '../text/en.ts';

const text = en.site.outputs;

export interface OutputRow {
  readonly name: keyof typeof text.names;
  readonly commanded: string;
  readonly says: string;
  /** Whether the device says what it was told; null when it does not say. */
  readonly follows: boolean | null;
}

/** The outputs that a site has: what each is told, and what the device says of it. */
export function outputRows(
  site: Site,
  outputs: Outputs,
  feedback: Feedback | null,
  numbers: NumberFormats,
): readonly OutputRow[] {
  const rows = [pumpRow(outputs.pumpFraction, feedback, numbers)];
  if (site.drain === 'drain-valve') rows.push(drainRow(outputs.drainOpen, feedback?.drainOpen ?? null));
  if (site.drain === 'drain-pump') rows.push(silentRow('drainPump', outputs.drainPumpOn));
  if (site.plumbing === 'reservoir') rows.push(silentRow('exchangerPump', outputs.exchangerPumpOn));
  if (site.heatDump !== undefined) rows.push(silentRow('heatDump', outputs.heatDumpOn === true));
  return rows;
}

function pumpRow(fraction: number, feedback: Feedback | null, numbers: NumberFormats): OutputRow {
  const word = (share: number) => (share === 0 ? text.off : numbers.percent(share));
  if (feedback === null) return { name: 'pump', commanded: word(fraction), says: text.silent, follows: null };
  const said = feedback.pumpFraction;
  return { name: 'pump', commanded: word(fraction), says: word(said), follows: fraction > 0 === said > 0 };
}

function drainRow(open: boolean, said: boolean | null): OutputRow {
  const commanded = open ? text.open : text.closed;
  if (said === null) return { name: 'drain', commanded, says: text.silent, follows: null };
  return { name: 'drain', commanded, says: said ? text.saysOpen : text.saysClosed, follows: said === open };
}

/** Nothing in what a device says covers these. */
function silentRow(name: OutputRow['name'], on: boolean): OutputRow {
  return { name, commanded: on ? text.on : text.off, says: text.silent, follows: null };
}
