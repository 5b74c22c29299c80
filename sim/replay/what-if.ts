import { stepOn } from '../../controller/engine/index.ts';
import type { LogReader } from '../../controller/log/log.ts';
import type { Decision } from '../../shared-types/engine.ts';
import type { LogRecord } from '../../shared-types/log.ts';
import type { Settings } from '../../shared-types/settings.ts';
import type { WhatIfReport } from '../../shared-types/what-if.ts';
import { type Carried, createCarrier } from './carrier.ts';
import { createDecisionCounter } from './decision-count.ts';
import { openLoopInput } from './open-loop-input.ts';
import { outputsDiffer } from './outputs-differ.ts';
import { createRemarks, localTime } from './remarks.ts';
import { rulesOf } from './rules.ts';
import { sayerOf, sideOf } from './sides.ts';

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
  readonly base: Carried;
  readonly other: ReturnType<typeof stepOn>;
}

function createWalk(reader: LogReader, settings: Settings) {
  const rules = rulesOf(reader);
  const remarks = createRemarks();
  const carrier = createCarrier(reader, rules, remarks, localTime);
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
    const base = carrier.decide(record, rule);
    const input = openLoopInput(record.input, place?.base.drivenBy, place?.other.decision);
    const other = stepOn(place?.other.state ?? base.before.state, input, rule.site, settings);
    place = { base, other };
    compare(record, base.decision, other.decision);
  }

  function compare({ input }: LogRecord, base: Decision, other: Decision): void {
    counts.base.add(base, input.elapsedMs);
    counts.other.add(other, input.elapsedMs);
    if (!outputsDiffer(base, other)) return;
    differences++;
    const sayer = sayerOf(base, other);
    firstDifference ??= {
      atMs: input.nowMs,
      base: sideOf(base, base.reasons[sayer].text),
      other: sideOf(other, other.reasons[sayer].text),
    };
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
