import { describe, expect, it } from 'vitest';
import { outcomeOf } from '../../../../controller/engine/index.ts';
import type { Outputs } from '../../../../shared-types/engine.ts';
import { createMinutes, minuteMs } from '../../../../sim/identify/world/minutes.ts';
import { differingFields } from '../../../../sim/replay/difference.ts';
import { sameOutcome } from '../../../../sim/replay/same-outcome.ts';
import { fakeDecision } from '../../../support/fake-engine.ts';
import { logRecord } from '../../../support/log-records.ts';
import { pumping } from '../../../support/plants.ts';

const decided = (outputs: Outputs) => ({ ...fakeDecision(logRecord(1).input, 0), outputs });
const dumping = { ...pumping, heatDumpOn: true };

describe('a logged heat dump', () => {
  it('is the same only as one that stands alike', () => {
    const logged = outcomeOf(decided(dumping));
    expect(sameOutcome(logged, decided(dumping))).toBe(true);
    for (const other of [pumping, { ...pumping, heatDumpOn: false }]) {
      expect(sameOutcome(logged, decided(other))).toBe(false);
      expect(differingFields(logged, outcomeOf(decided(other)))).toEqual(['outputs.heatDumpOn']);
    }
  });

  it('is driven by itself in the minutes of a span', () => {
    const taker = createMinutes(0, 1);
    taker.drive(0, minuteMs / 4, pumping);
    taker.drive(minuteMs / 4, minuteMs / 2, dumping);
    taker.drive(minuteMs / 2, minuteMs, dumping);
    const { drives } = taker.minutes();
    expect(drives[0]?.map(({ dtS, outputs }) => [dtS, outputs.heatDumpOn])).toEqual([
      [15, undefined],
      [45, true],
    ]);
  });
});
