import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { LoopFit } from '../../../shared-types/tuning.ts';
import { fitPath, keepFit, loopOfFit, readFit } from '../../../sim/identify/loop-file.ts';
import { usualSky } from '../../../sim/identify/possible-loop.ts';

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
  sensorErrors: [
    { channel: 'irradianceWM2', kind: 'share', value: -0.02, standardError: 0.01 },
    { channel: 'ambientC', kind: 'offset', value: 0.3, standardError: 0.1 },
  ],
  covariance: [4e-4, 25e-4, 1e-4, 1e-2].map((variance, own) =>
    [0, 1, 2, 3].map((i) => (i === own ? variance : 0)),
  ),
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

  it('that was kept before errors of sensors were told has none', () => {
    keepFit(logPath, fit);
    const { sensorErrors: _, ...older } = fit;
    writeFileSync(fitPath(logPath, 'invented-house'), JSON.stringify(older));
    expect(readFit(logPath, 'invented-house')).toEqual({ ok: true, fit: { ...fit, sensorErrors: [] } });
  });

  it('gives a plant what was fitted, leaves what was held, and tells what the sensors show wrong', () => {
    expect(loopOfFit(fit)).toEqual({
      traits: { opticalEfficiency: 0.9, depthFactor: 1.1 },
      sensorErrors: { irradianceWM2: { share: -0.02, offset: 0 }, ambientC: { share: 0, offset: 0.3 } },
      sky: usualSky,
    });
  });

  it('moves it as told, and not beyond what a trait may be', () => {
    expect(loopOfFit(fit, [0.2, -0.1]).traits).toEqual({ opticalEfficiency: 1, depthFactor: 1 });
    expect(loopOfFit(fit, [-0.7, 0]).traits.opticalEfficiency).toBe(0.3);
    const { sensorErrors } = loopOfFit(fit, [0, 0, 0.05, -0.1]);
    expect(sensorErrors.irradianceWM2?.share).toBeCloseTo(0.03, 12);
    expect(sensorErrors.ambientC?.offset).toBeCloseTo(0.2, 12);
  });
});
