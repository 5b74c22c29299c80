import { describe, expect, it } from 'vitest';
import { createDevice } from '../../../../sim/device/device.ts';
import { createFaultBoard } from '../../../../sim/device/fault-board.ts';
import { fillFraction } from '../../../../sim/plant/pan.ts';
import { createPlant } from '../../../../sim/plant/state.ts';
import { createWeather } from '../../../../sim/weather/weather.ts';
import { manualClock } from '../../../support/manual-clock.ts';
import { pumping } from '../../../support/plants.ts';
import { demoContent, siteOf } from '../../../support/sites.ts';

const site = siteOf(demoContent());
const told = { ...pumping, expiresInMs: 60_000 };

function makeDevice() {
  const clock = manualClock();
  const faults = createFaultBoard();
  const device = createDevice({
    plant: createPlant(site, { waterC: 25, panC: 20 }),
    plantAtMs: clock.nowMs(),
    weather: createWeather({ location: site.location, seed: 1, kinds: ['clear'] }),
    clock,
    wallMs: clock.steadyMs,
    seed: 1,
    faults,
  });
  const level = () => fillFraction(device.standing().plant.pan, device.standing().plant.parts);
  return { clock, faults, device, level };
}

describe('simulated device', () => {
  it('does what it is told and says so', () => {
    const { clock, device, level } = makeDevice();
    for (let i = 0; i < 20; i++) {
      device.hear(told);
      clock.advance(30_000);
      device.catchUp();
    }
    expect(level()).toBeCloseTo(0.5, 1);
    expect(device.feedback()).toEqual({ ...pumping, expired: false });
    expect(device.read().flowLMin).toBeCloseTo(24, 0);
  });

  it('falls safe at the very instant of expiry, however late it looks', () => {
    const { clock, device, level } = makeDevice();
    device.hear(told);
    clock.advance(60_000);
    device.catchUp();
    const filled = level();
    expect(filled).toBeCloseTo(0.05, 3);
    // A pause of an hour: a minute of pumping at most, then everything has run out.
    const late = makeDevice();
    late.device.hear(told);
    late.clock.advance(3_600_000);
    late.device.catchUp();
    expect(late.level()).toBe(0);
    expect(late.device.feedback()).toMatchObject({ pumpFraction: 0, drainOpen: true, expired: true });
    const { sensors } = late.device.standing().plant;
    expect(sensors.panLevelMm?.bodyValue).toBeCloseTo(0, 6);
  });

  it('catches up after days in bounded work, and says what it left out', () => {
    const { clock, device } = makeDevice();
    clock.advance(10 * 86_400_000);
    const leftOutMs = device.catchUp();
    expect(leftOutMs).toBe(10 * 86_400_000 - 2000 * 60_000);
    expect(device.standing().atMs).toBe(clock.nowMs());
    clock.advance(20 * 3_600_000);
    expect(device.catchUp()).toBe(0);
  });

  it('waits when its calendar is put back a little, and begins there when it is put back far', () => {
    const { clock, device } = makeDevice();
    const beganMs = clock.nowMs();
    clock.advance(-60_000);
    device.catchUp();
    expect(device.standing().atMs).toBe(beganMs);
    clock.advance(-7_200_000);
    device.catchUp();
    expect(device.standing().atMs).toBe(clock.nowMs());
  });

  it('has a fault from its instant on, until it is cleared', () => {
    const { clock, faults, device } = makeDevice();
    faults.raise({ name: 'pump-stuck-on', size: 0 }, clock.nowMs() + 600_000);
    const pumpAfter = (durationMs: number) => {
      clock.advance(durationMs);
      device.catchUp();
      return device.feedback().pumpFraction;
    };
    expect(pumpAfter(590_000)).toBe(0);
    expect(pumpAfter(20_000)).toBe(1);
    faults.clear({ name: 'pump-stuck-on' });
    expect(pumpAfter(5_000)).toBe(0);
  });
});
