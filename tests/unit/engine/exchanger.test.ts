import { describe, expect, it } from 'vitest';
import { exchangerRuns } from '../../../controller/engine/exchanger.ts';
import type { Channel } from '../../../shared-types/channels.ts';
import { circulatingLoop, commonSensors, emptyLoop, makeSite } from './rig.ts';
import { situationOf } from './situations.ts';

const sensors: Channel[] = [...commonSensors, 'reservoirC'];
const site = makeSite('drain-valve', sensors, { plumbing: 'reservoir' });
const runs = (loop: ReturnType<typeof emptyLoop>) => loop.last.outputs.exchangerPumpOn;

describe('the exchanger pump', () => {
  it('passes on what an emptied pan left in the reservoir, until both are alike', () => {
    const loop = emptyLoop(site).set({ reservoirC: 20.9 }).run(20);
    expect([loop.phase, runs(loop)]).toEqual(['empty', false]);
    expect(runs(loop.set({ reservoirC: 21 }).run(20))).toBe(true);
    expect(runs(loop.set({ reservoirC: 20.3 }).run(20))).toBe(true);
    expect(runs(loop.set({ reservoirC: 20.1 }).run(20))).toBe(false);
  });

  it('stands while the reservoir is colder than the store, even while water circulates', () => {
    const loop = circulatingLoop(site).set({ reservoirC: 19 }).run(20);
    expect([loop.phase, runs(loop)]).toEqual(['circulating', false]);
    expect(runs(loop.set({ reservoirC: 26 }).run(20))).toBe(true);
  });

  it('follows the circulation where nothing measures the reservoir', () => {
    const blind = makeSite('drain-valve', commonSensors, { plumbing: 'reservoir' });
    expect(runs(circulatingLoop(blind))).toBe(true);
    expect(runs(emptyLoop(blind))).toBe(false);
  });

  it('follows the circulation where the store bottom is not well known', () => {
    const given = { site, told: { reservoirC: 40 } };
    expect([true, false].map((going) => exchangerRuns(situationOf(given), going, false))).toEqual([
      true,
      false,
    ]);
    const storeBottomC = { quality: 'doubtful', value: 20, ageMs: 0, cause: 'jumped' } as const;
    expect(
      exchangerRuns(situationOf({ ...given, told: { reservoirC: 40, storeBottomC } }), false, false),
    ).toBe(false);
  });

  it('stands while a protection acts', () => {
    const loop = emptyLoop(site).set({ reservoirC: 40 }).run(20);
    expect(runs(loop.set({ storeTopC: 70 }).run(20))).toBe(false);
  });

  it('is never told to run where there is no reservoir', () => {
    expect(runs(circulatingLoop(makeSite('drain-valve', sensors)).set({ reservoirC: 60 }).run(20))).toBe(
      false,
    );
  });
});
