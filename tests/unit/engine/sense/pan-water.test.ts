import { describe, expect, it } from 'vitest';
import {
  levelSays,
  overdueMs,
  updateWater,
  type WaterEvidence,
} from '../../../../controller/engine/sense/pan-water.ts';
import {
  type Phase,
  unknownWater,
  type WaterLevel,
  type WaterMemory,
} from '../../../../controller/engine/state.ts';
import { makeSite, quickSettings } from '../rig.ts';

const site = makeSite('drain-valve');
const cornered = makeSite('corner');
const pumped = makeSite('drain-pump');
const tray = { ...pumped, pan: { ...pumped.pan, waterDepthM: 0.1 } };

const phase = (name: Phase['name']): Phase => ({ name, sinceMs: 0 }) as Phase;

const resting: WaterEvidence = {
  levelMm: null,
  drainSays: null,
  pumpRuns: false,
  phase: phase('resting'),
  elapsedMs: 1000,
  site,
  settings: quickSettings,
};
const emptying = { ...resting, phase: phase('emptying') };

const next = (changes: Partial<WaterMemory>, evidence: Partial<WaterEvidence>) =>
  updateWater({ ...unknownWater, ...changes }, { ...emptying, ...evidence });

describe('the time for which a pan has drained', () => {
  it.each(['emptying', 'stopped', 'empty'] as const)('counts while %s', (name) => {
    expect(next({ level: 'part', drainedMs: 3000, emptyingMs: 4000 }, { phase: phase(name) })).toMatchObject({
      drainedMs: 4000,
      emptyingMs: 5000,
    });
  });

  it.each<[string, Partial<WaterMemory>, Partial<WaterEvidence>]>([
    ['while it circulates', {}, { phase: phase('circulating') }],
    ['while it rests', {}, { phase: phase('resting') }],
    ['where nothing empties it', {}, { site: cornered }],
    ['once it is empty', { level: 'empty' }, {}],
  ])('begins anew %s', (_when, before, evidence) => {
    const counted = { level: 'part' as const, drainedMs: 3000, emptyingMs: 4000 };
    expect(next({ ...counted, ...before }, evidence)).toMatchObject({ drainedMs: 0, emptyingMs: 0 });
  });

  it.each<[Partial<WaterEvidence>, number, number]>([
    [{ levelMm: 36 }, 0, 5000],
    [{ levelMm: 35.9 }, 4000, 5000],
    [{ drainSays: false }, 3000, 5000],
    [{ drainSays: true }, 4000, 5000],
    [{ pumpRuns: true }, 3000, 5000],
  ])('%o: %d ms let it run empty, %d ms since it began', (evidence, drainedMs, emptyingMs) => {
    expect(next({ level: 'part', drainedMs: 3000, emptyingMs: 4000 }, evidence)).toMatchObject({
      drainedMs,
      emptyingMs,
    });
  });

  it.each([
    [59_000, 'empty'],
    [58_999, 'part'],
  ])('proves it empty after the drain time: %d ms and one second make it %s', (drainedMs, level) => {
    expect(next({ level: 'part', drainedMs }, {}).level).toBe(level);
  });
});

describe('an emptying that lasts', () => {
  it('is overdue at one and a half times the drain time', () => {
    expect(overdueMs(quickSettings)).toBe(90_000);
    const seen = (emptyingMs: number, before: Partial<WaterMemory> = {}) =>
      next({ level: 'part', emptyingMs, ...before }, { levelMm: 20, drainSays: false });
    expect([seen(88_999).overdue, seen(89_000).overdue]).toEqual([false, true]);
    expect(seen(0, { overdue: true }).overdue).toBe(true);
    expect(next({ level: 'part', overdue: true, drainedMs: 59_000 }, {}).overdue).toBe(false);
  });
});

describe('the memory of the water', () => {
  it.each<[Partial<WaterMemory>]>([[{}], [{ level: 'empty' }], [{ level: 'full', overdue: true }]])(
    'stays the same object where nothing changes: %o',
    (changes) => {
      const before = { ...unknownWater, ...changes };
      expect(updateWater(before, resting)).toBe(before);
    },
  );

  it('keeps what is not its own', () => {
    expect(next({ level: 'part', fillStoreC: 7 }, {})).toMatchObject({ fillStoreC: 7, drainedMs: 1000 });
    const before: WaterMemory = { ...unknownWater, level: 'empty', overdue: true };
    expect(updateWater(before, resting)).toMatchObject({ level: 'empty', overdue: false });
  });

  it.each<[Partial<WaterMemory>, Partial<WaterEvidence>, object]>([
    [
      { level: 'part', drainedMs: 5 },
      { elapsedMs: 0, levelMm: 40, phase: phase('resting') },
      { level: 'full' },
    ],
    [{ level: 'part', drainedMs: 5 }, { elapsedMs: 0, phase: phase('resting') }, { drainedMs: 0 }],
    [{ level: 'part', emptyingMs: 5 }, { elapsedMs: 0, phase: phase('resting') }, { emptyingMs: 0 }],
    [{ level: 'part', emptyingMs: 90_000 }, { elapsedMs: 0 }, { overdue: true }],
    [{ level: 'full' }, { elapsedMs: 0, levelMm: 20 }, { level: 'part' }],
  ])('takes up one change alone: %o, %o', (before, evidence, expected) => {
    expect(next(before, evidence)).toMatchObject(expected);
  });
});

describe('the level without a level sensor', () => {
  it.each<[WaterLevel, Partial<WaterEvidence>, WaterLevel]>([
    ['empty', { pumpRuns: true, phase: phase('empty') }, 'unknown'],
    ['full', { pumpRuns: true }, 'full'],
    ['part', { pumpRuns: true, phase: phase('filling') }, 'part'],
    ['empty', { phase: phase('filling') }, 'part'],
    ['unknown', { phase: phase('filling') }, 'part'],
    ['full', { phase: phase('circulating') }, 'full'],
    ['empty', { phase: phase('empty') }, 'empty'],
  ])('%s, %o: %s', (level, evidence, expected) => {
    expect(next({ level }, evidence).level).toBe(expected);
  });

  it('is not empty by time while the pump runs on', () => {
    expect(next({ level: 'full', drainedMs: 60_000 }, { pumpRuns: true }).level).toBe('full');
  });
});

describe('the level under a drain pump', () => {
  const at = (levelMm: number, changes: Partial<WaterMemory> = {}, evidence: Partial<WaterEvidence> = {}) =>
    next({ level: 'part', ...changes }, { site: pumped, levelMm, ...evidence }).level;

  it('is empty once no more than its sump is left, or the drain time has passed', () => {
    expect([at(1), at(1.1), at(4), at(4.1)]).toEqual(['empty', 'part', 'part', 'part']);
    expect([at(2, {}, { site: tray }), at(2.1, {}, { site: tray })]).toEqual(['empty', 'part']);
    expect([at(3, { drainedMs: 59_000 }), at(3, { drainedMs: 58_999 })]).toEqual(['empty', 'part']);
    expect(at(20, { drainedMs: 59_000 })).toBe('part');
  });

  it('is what the sensor says while it does not pump, and where there is none', () => {
    expect(at(3, {}, { phase: phase('resting') })).toBe('empty');
    expect(at(3, {}, { phase: phase('empty') })).toBe('empty');
    expect(at(3, {}, { phase: phase('stopped') })).toBe('part');
    expect(at(3, { level: 'empty' }, { phase: phase('stopped') })).toBe('empty');
    expect(at(3, {}, { site })).toBe('empty');
    expect(at(40, {}, { phase: phase('emptying') })).toBe('full');
  });
});

describe('a full pan', () => {
  it('begins at nine tenths of its depth and ends below eight', () => {
    const at = (levelMm: number, before: WaterLevel) => levelSays(levelMm, 40, before);
    expect([at(36, 'part'), at(35.9, 'part'), at(32, 'full'), at(31.9, 'full')]).toEqual([
      'full',
      'part',
      'full',
      'part',
    ]);
  });
});

describe('the film in a shallow pan', () => {
  it('counts as empty at both ends of the hysteresis', () => {
    expect([levelSays(2, 8, 'empty'), levelSays(2.1, 8, 'empty')]).toEqual(['empty', 'part']);
    expect([levelSays(2, 20, 'part'), levelSays(2.1, 20, 'part')]).toEqual(['empty', 'part']);
    expect([levelSays(4, 20, 'empty'), levelSays(4.1, 20, 'empty')]).toEqual(['empty', 'part']);
  });
});
