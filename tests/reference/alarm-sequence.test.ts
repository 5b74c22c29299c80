import { describe, expect, it } from 'vitest';
import { Alarm as Rig } from '../unit/engine/alarm-rig.ts';

/**
 * OPC 10000-9 (OPC UA Part 9, Alarms and Conditions, release 1.05), annex B.1.2, table B.1: an alarm of which
 * only the latest state is kept. The part is written in accordance with IEC 62682 and ISA-18.2.
 *
 * The table confirms each acknowledgement by a second act of a person. There is no such act here, so rows 4
 * and 8 (confirmed) ask nothing of the engine, and what the table retains for want of a confirmation alone
 * (rows 3 and 7: not active, acknowledged) is not listed here.
 */
const rows: readonly {
  readonly number: number;
  readonly event: 'goes active' | 'goes inactive' | 'acknowledged' | 'confirmed';
  readonly active: boolean;
  readonly acknowledged: boolean;
  readonly confirmed: boolean;
  readonly retain: boolean;
}[] = [
  { number: 1, event: 'goes active', active: true, acknowledged: false, confirmed: true, retain: true },
  { number: 2, event: 'acknowledged', active: true, acknowledged: true, confirmed: false, retain: true },
  { number: 3, event: 'goes inactive', active: false, acknowledged: true, confirmed: false, retain: true },
  { number: 4, event: 'confirmed', active: false, acknowledged: true, confirmed: true, retain: false },
  { number: 5, event: 'goes active', active: true, acknowledged: false, confirmed: true, retain: true },
  { number: 6, event: 'goes inactive', active: false, acknowledged: false, confirmed: true, retain: true },
  { number: 7, event: 'acknowledged', active: false, acknowledged: true, confirmed: false, retain: true },
  { number: 8, event: 'confirmed', active: false, acknowledged: true, confirmed: true, retain: false },
];

const acts = {
  'goes active': (alarm: Rig) => alarm.raise(),
  'goes inactive': (alarm: Rig) => alarm.letReturn(),
  acknowledged: (alarm: Rig) => expect(alarm.acknowledge()).toBe('accepted'),
  confirmed: () => undefined,
};

describe('the sequence of table B.1 of OPC UA part 9', () => {
  it('is met event by event, in one walk', () => {
    const alarm = new Rig();
    expect(alarm.seen).toBeUndefined();
    for (const { event, active, acknowledged, confirmed, retain, number } of rows) {
      acts[event](alarm);
      const listed = alarm.seen !== undefined;
      expect(alarm.isActive, `row ${number}`).toBe(active);
      expect(alarm.isAcknowledged, `row ${number}`).toBe(acknowledged);
      expect(listed, `row ${number}`).toBe(retain && (active || !acknowledged || confirmed));
    }
  });
});
