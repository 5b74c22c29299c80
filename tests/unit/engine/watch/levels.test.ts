import { describe, expect, it } from 'vitest';
import { calmFlow, newUpkeep } from '../../../../controller/engine/watch/memory.ts';
import { lacksForFill, updateReservoir } from '../../../../controller/engine/watch/reservoir.ts';
import { updateRestBook } from '../../../../controller/engine/watch/rest-level.ts';
import { reservoirSite, situationOf } from '../watch-rig.ts';

const nowMs = 3_600_000;
const since = (name: string, forMs: number) => ({ phase: { name, sinceMs: nowMs - forMs } });

describe('the book of a resting pan', () => {
  it('stays as it is while none was begun and the pan does not rest', () => {
    expect(updateRestBook(newUpkeep, situationOf({ values: { panLevelMm: 40 } }))).toBe(newUpkeep);
  });

  it('is opened anew, whenever the last one was', () => {
    const before = { ...newUpkeep, restMm: 40, restFromMs: nowMs - 1000 };
    const situation = situationOf({ state: since('resting', 900_000), values: { panLevelMm: 40 } });
    expect(updateRestBook(before, situation)).toEqual({ ...before, restFromMm: 40, restFromMs: nowMs });
  });
});

describe('the book of a reservoir', () => {
  const judge = (upkeep: object, learnt: object, reservoirLevelMm: number, state: object) => {
    const judged = { upkeep: { ...newUpkeep, ...upkeep }, learnt: learnt as Record<string, number> };
    const scene = { site: reservoirSite, values: { reservoirLevelMm }, state };
    return { judged, next: updateReservoir(judged, situationOf(scene)) };
  };
  const low = { flow: { ...calmFlow, shortMs: 0 } };

  it('leaves a need alone that is met just so', () => {
    const { judged, next } = judge({ reservoirMm: 400, neededMm: 430 }, {}, 20, low);
    expect(next.upkeep).toBe(judged.upkeep);
  });

  it('goes by a sensor that reads below nought as well', () => {
    expect(judge({ reservoirMm: -30 }, {}, 20, low).next.upkeep.neededMm).toBe(0);
    const circulating = since('circulating', 600_000);
    expect(judge({ reservoirMm: null }, {}, -5, circulating).next.learnt).toEqual({});
    const state = { ...since('empty', 0), upkeep: { ...newUpkeep, reservoirMm: -1 } };
    expect(lacksForFill(situationOf({ site: reservoirSite, state }))).toBe(false);
  });

  it('learns nothing of a reservoir that is as full as ever', () => {
    const empty = since('empty', 900_000);
    const { judged, next } = judge({ reservoirMm: 800 }, { reservoirFullMm: 800 }, 800, empty);
    expect(next.learnt).toBe(judged.learnt);
    expect(next.upkeep).toMatchObject({ lackingMm: 0, lackingTimes: 0 });
  });
});
