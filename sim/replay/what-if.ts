import { type EngineState, stepOn } from '../../controller/engine/index.ts';
import type { LogReader } from '../../controller/log/log.ts';
import type { Decision } from '../../shared-types/engine.ts';
import type { LogRecord } from '../../shared-types/log.ts';
import type { Settings } from '../../shared-types/settings.ts';
import type { Side, WhatIfReport } from '../../shared-types/what-if.ts';
import { createDecisionCounter } from './decision-count.ts';
import { openLoopInput } from './open-loop-input.ts';
import { outputsDiffer } from './outputs-differ.ts';
import { createRemarks } from './remarks.ts';
import { rulesOf } from './rules.ts';
import { takeUp } from './taking-up.ts';

export type WhatIf = typeof whatIf;

interface WhatIfOptions {
  /** Told now and then how many steps are done. @returns false to give up. */
  readonly goOn?: (steps: number) => boolean;
}

/** Steps between two looks at whether somebody still wants the answer. */
const stepsPerLook = 200;

/**
 * Decides a logged day twice from the same readings: under the settings of then, and under others.
 *
 * The readings stay those of the loop as it was driven. From the first difference on the loop would have
 * gone another way, so that later decisions are a hint and heat cannot be told at all.
 *
 * @returns undefined when it was given up. @throws RangeError when nothing of that day is kept.
 */
export function whatIf(
  reader: LogReader,
  day: string,
  settings: Settings,
  { goOn = () => true }: WhatIfOptions = {},
): WhatIfReport | undefined {
  const walk = createWalk(reader, settings);
  let steps = 0;
  for (const record of reader.records(day)) {
    if (steps++ % stepsPerLook === 0 && !goOn(steps)) return undefined;
    walk.meet(record);
  }
  if (steps === 0) throw new RangeError(`nothing of ${day} is kept`);
  return { day, steps, ...walk.report() };
}

interface Place {
  readonly record: LogRecord;
  readonly base: { readonly state: EngineState; readonly decision: Decision };
  readonly other: { readonly state: EngineState; readonly decision: Decision };
}

function createWalk(reader: LogReader, settings: Settings) {
  const rules = rulesOf(reader);
  const remarks = createRemarks();
  const counts = { base: createDecisionCounter(), other: createDecisionCounter() };
  let place: Place | undefined;
  let settingsThen: Settings | null = null;
  let differences = 0;
  let firstDifference: WhatIfReport['firstDifference'] = null;

  function meet(record: LogRecord): void {
    const rule = rules.of(record);
    if (rule === undefined) {
      remarks.add('Some steps are left out: their site or settings are no longer in the log.');
      return;
    }
    if (settingsThen !== null && settingsThen !== rule.settings)
      remarks.add('The settings were changed on that day; the last of them are named.');
    settingsThen = rule.settings;
    const follows = place?.record.run === record.run && place.record.step + 1 === record.step;
    const before = follows ? place?.base.state : undefined;
    const baseState = before ?? takeUp(reader, record, rules, place?.base.state).state;
    const base = stepOn(baseState, record.input, rule.site, rule.settings);
    const input = openLoopInput(record.input, place?.base.decision, place?.other.decision);
    const other = stepOn(place?.other.state ?? baseState, input, rule.site, settings);
    place = { record, base, other };
    compare(record, base.decision, other.decision);
  }

  function compare({ input }: LogRecord, base: Decision, other: Decision): void {
    counts.base.add(base, input.elapsedMs);
    counts.other.add(other, input.elapsedMs);
    if (!outputsDiffer(base, other)) return;
    differences++;
    firstDifference ??= { atMs: input.nowMs, base: sideOf(base, other), other: sideOf(other, base) };
  }

  return {
    meet,
    report: () => ({
      differences,
      firstDifference,
      base: counts.base.count(),
      other: counts.other.count(),
      settingsThen,
      remarks: [...remarks.list(), ...reader.remarks.map((text) => `The log: ${text}.`)],
    }),
  };
}

/** A side with the reason that speaks for what it does otherwise than its opposite. */
function sideOf({ phase, outputs, reasons }: Decision, opposite: Decision): Side {
  const { pumpFraction, drainOpen } = outputs;
  const sayer =
    phase !== opposite.phase ? 'phase' : pumpFraction !== opposite.outputs.pumpFraction ? 'pump' : 'drain';
  return { phase, pumpFraction, drainOpen, reason: reasons[sayer].text };
}
