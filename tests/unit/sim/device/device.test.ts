import { describe, expect, it } from 'vitest';
import { createDevice } from '../../../../sim/device/device.ts';
import { createFaultBoard } from '../../../../sim/device/fault-board.ts';
import { numberOf } from '../../../../sim/plant/makes.ts';
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
  const faults = createFaultBoard(site);
  const device = createDevice({
    plant: createPlant(site, { waterC: 25, panC: 20 }),
    plantAtMs: clock.nowMs(),
    weather: createWeather({ location: site.location, seed: 1, kinds: ['clear'] }),
    clock,
    wallMs: clock.steadyMs,
    seed: 1,
    faults,
  });
  const level = () => fillFraction(device.standing().plant);
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
    // Ten minutes of 24 L/min are half a pan, less what fills the pipe and what the lift costs.
    expect(level()).toBeGreaterThan(0.4);
    expect(level()).toBeLessThan(0.5);
    expect(device.feedback()).toEqual({ ...pumping, expired: false });
    const { flowLMin } = device.standing().plant.moving;
    expect(Math.abs(Number(device.read().flowLMin) - flowLMin)).toBeLessThan(0.05 * flowLMin);
  });

  it('falls safe at the very instant of expiry, however late it looks', () => {
    const { clock, device, level } = makeDevice();
    device.hear(told);
    clock.advance(60_000);
    device.catchUp();
    const filled = level();
    expect(filled).toBeGreaterThan(0.03);
    clock.advance(5_000);
    device.catchUp();
    expect(level()).toBeLessThan(filled);
    // A pause of an hour: a minute of pumping at most, then everything has run out.
    const late = makeDevice();
    late.device.hear(told);
    late.clock.advance(3_600_000);
    late.device.catchUp();
    expect(late.level()).toBe(0);
    expect(late.device.feedback()).toMatchObject({ pumpFraction: 0, drainOpen: true, expired: true });
    const { bodyValue } = late.device.standing().plant.sensors;
    expect(bodyValue[numberOf.panLevelMm]).toBeCloseTo(0, 6);
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
    faults.raise({ name: 'pump-stuck-on', size: 0 }, clock.nowMs() + 600_000, clock.nowMs() + 1_200_000);
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

  it('has its snow once, whatever steps it lives by', () => {
    const { clock, faults, device } = makeDevice();
    faults.raise({ name: 'sheet-snowed', size: 30 }, clock.nowMs() + 7_300);
    for (const stepMs of [4_000, 3_400, 500, 5_000, 100, 5_000]) {
      clock.advance(stepMs);
      device.catchUp();
    }
    expect(device.standing().plant.snowKgM2).toBeGreaterThan(29);
    expect(device.standing().plant.snowKgM2).toBeLessThan(30.001);
  });

  it('without power stands, drains, hears and sends nothing, and remembers no order afterwards', () => {
    const { clock, faults, device, level } = makeDevice();
    const liveOn = (durationMs: number) => {
      clock.advance(durationMs);
      device.catchUp();
    };
    for (let i = 0; i < 4; i++) {
      device.hear(told);
      liveOn(50_000);
    }
    const filled = level();
    device.hear({ ...told, expiresInMs: 600_000 });
    faults.raise({ name: 'power-cut', size: 0 }, clock.nowMs() + 1, clock.nowMs() + 120_000);
    liveOn(100_000);
    expect(device.powered()).toBe(false);
    device.hear({ ...told, expiresInMs: 600_000 });
    expect(device.read()).toEqual({});
    expect(device.feedback()).toMatchObject({ pumpFraction: 0, drainOpen: true, expired: true });
    expect(level()).toBeLessThan(filled);
    liveOn(25_000);
    expect(device.powered()).toBe(true);
    expect(device.feedback()).toMatchObject({ pumpFraction: 0, drainOpen: true, expired: true });
    device.hear(told);
    liveOn(5_000);
    expect(device.feedback()).toMatchObject({ pumpFraction: 1, drainOpen: false, expired: false });
    expect(device.read().panOutletC).toBeTypeOf('number');
  });

  it('lets a drift grow with the time that it has been there', () => {
    const { clock, faults, device } = makeDevice();
    device.catchUp();
    const drift = { name: 'sensor-drifting', channel: 'storeMiddleC', size: 24 } as const;
    clock.advance(1000);
    device.catchUp();
    const before = Number(device.read().storeMiddleC);
    faults.raise(drift, clock.nowMs());
    clock.advance(3 * 3_600_000);
    device.catchUp();
    // A kelvin an hour; the store itself loses some tenths.
    const drifted = Number(device.read().storeMiddleC) - before;
    expect(drifted).toBeGreaterThan(2.5);
    expect(drifted).toBeLessThan(3.3);
  });
});
