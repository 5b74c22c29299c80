import { describe, expect, it } from 'vitest';
import { createOutputsLease, safeState } from '../../../../sim/device/outputs-lease.ts';
import { pumping } from '../../../support/plants.ts';

const told = { ...pumping, expiresInMs: 60_000 };

describe('outputs of the device', () => {
  it('are safe before the first word', () => {
    const lease = createOutputsLease();
    expect(lease.inForce(1e9, 1e9)).toEqual(safeState);
    expect(lease.expired(0, 0)).toBe(true);
  });

  // Told at steady 1000 ms and wall 500 ms, for 60 s.
  const rows = [
    ['hold at once', 1000, 500, false],
    ['hold to the last millisecond', 60_999, 60_499, false],
    ['are safe once expired on both clocks', 61_000, 60_500, true],
    ['hold two seconds of the wall on a fast clock', 3_601_000, 2499, false],
    ['are safe after two seconds of the wall on a fast clock', 3_601_000, 2500, true],
  ] as const;
  it.each(rows)('%s', (_, steadyMs, wallMs, expired) => {
    const lease = createOutputsLease();
    lease.renew(told, 1000, 500);
    expect(lease.expired(steadyMs, wallMs)).toBe(expired);
    expect(lease.inForce(steadyMs, wallMs)).toEqual(expired ? safeState : pumping);
  });

  it('have a heat dump where one was told of, and none in their safe state', () => {
    const lease = createOutputsLease();
    lease.renew({ ...told, heatDumpOn: true }, 0, 0);
    expect(lease.inForce(0, 0)).toEqual({ ...pumping, heatDumpOn: true });
    expect(lease.inForce(60_000, 60_000)).not.toHaveProperty('heatDumpOn');
  });

  it('live on when they are told again, and by the newest word', () => {
    const lease = createOutputsLease();
    lease.renew(told, 0, 0);
    lease.renew({ ...told, pumpFraction: 0.5 }, 59_000, 59_000);
    expect(lease.inForce(110_000, 110_000).pumpFraction).toBe(0.5);
    expect(lease.expired(119_000, 119_000)).toBe(true);
  });
});
