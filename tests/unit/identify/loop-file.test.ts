import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { LoopFit } from '../../../shared-types/tuning.ts';
import { fitPath, keepFit, readFit, traitsOfFit } from '../../../sim/identify/loop-file.ts';

const fitted = { unit: '1', heldBecause: null };
const fit: LoopFit = {
  schemaVersion: 1,
  site: 'invented-house',
  days: ['2031-06-21'],
  converged: true,
  parameters: [
    { ...fitted, name: 'opticalEfficiency', value: 0.9, standardError: 0.02 },
    { ...fitted, name: 'windLossJM3K', value: 3.5, standardError: null, heldBecause: 'no wind sensor' },
    { ...fitted, name: 'depthFactor', value: 1.1, standardError: 0.05 },
  ],
  covariance: [
    [4e-4, 0],
    [0, 25e-4],
  ],
  residuals: [],
  verdicts: [],
};

let folder: string;
let logPath: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'fit-'));
  logPath = join(folder, 'invented-house', 'log.sqlite');
});
afterEach(() => rmSync(folder, { recursive: true }));

const whyOf = (site = 'invented-house') => {
  const read = readFit(logPath, site);
  return read.ok ? 'a fit' : read.why;
};

describe('a fit beside a log', () => {
  it('comes back as it was kept, and leaves no other file', () => {
    keepFit(logPath, fit);
    expect(readFit(logPath, 'invented-house')).toEqual({ ok: true, fit });
    expect(readdirSync(join(folder, 'invented-house'))).toEqual(['invented-house.loop.json']);
  });

  it('says that there is none', () => {
    expect(whyOf()).toBe('no fit is kept beside the log');
  });

  it.each([
    ['is no JSON', '{', 'cannot be read'],
    ['is no fit', '{}', 'holds no fit'],
    ['is of another site', JSON.stringify({ ...fit, site: 'other' }), 'is of the site other'],
    ['did not converge', JSON.stringify({ ...fit, converged: false }), 'did not converge'],
  ])('refuses what %s', (_what, content, why) => {
    keepFit(logPath, fit);
    writeFileSync(fitPath(logPath, 'invented-house'), content);
    expect(whyOf()).toContain(why);
  });

  it('gives a plant what was fitted, and leaves what was held', () => {
    expect(traitsOfFit(fit)).toEqual({ opticalEfficiency: 0.9, depthFactor: 1.1 });
  });

  it('moves it as told, and not beyond what a trait may be', () => {
    expect(traitsOfFit(fit, [0.2, -0.1])).toEqual({ opticalEfficiency: 1, depthFactor: 1 });
    expect(traitsOfFit(fit, [-0.7, 0]).opticalEfficiency).toBe(0.3);
  });
});
