import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { reviveState } from '../../../controller/engine/index.ts';
import { logPath } from '../../../controller/log/log.ts';
import { openLogReader } from '../../../controller/log/reader.ts';
import { openLogWriter } from '../../../controller/log/writer.ts';
import { keepPlant, loadPlant } from '../../../sim/device/plant-state-file.ts';
import { recordHistory } from '../../../sim/history.ts';
import { demoContent, siteOf } from '../../support/sites.ts';
import { type TemporaryFolder, temporaryFolder } from '../../support/temporary.ts';

const site = siteOf(demoContent({ control: { stepS: 10, outputExpiryS: 60 } }));
const fromMs = Date.UTC(2031, 5, 20);
const toMs = Date.UTC(2031, 5, 21, 9);
let folder: TemporaryFolder;
beforeEach(() => {
  folder = temporaryFolder('history');
});
afterEach(() => folder.remove());
const record = (more: { seed?: number; onProgress?: (share: number) => void } = {}) =>
  recordHistory({ site, dataFolder: folder.path, fromMs, toMs, seed: 1, kinds: ['clear'], ...more });

describe('simulated history', () => {
  it('leaves a log of whole days with heat in them', () => {
    const shares: number[] = [];
    record({ onProgress: (share) => shares.push(share) });
    const reader = openLogReader(logPath(folder.path, site.name));
    const [first, second] = reader.days();
    expect(reader.days()).toHaveLength(2);
    expect(first).toMatchObject({ day: '2031-06-20', steps: 8640, alarms: 0 });
    expect(first?.coveredFraction).toBeGreaterThan(0.999);
    // 12 m2 on a clear June day: some 8 kWh/m2 of sun, of which a good part, but not all, comes home.
    expect((first?.heatHomeJ ?? 0) / 3.6e6 / 12).toBeGreaterThan(1.5);
    expect((first?.heatHomeJ ?? 0) / 3.6e6 / 12).toBeLessThan(8);
    expect(first?.fills).toBeGreaterThan(0);
    expect(second?.lastMs).toBe(toMs);
    expect(reader.events(1000).map(({ kind }) => kind)).toContain('phase-changed');
    expect(shares.at(-1)).toBe(1);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    reader.close();
  });

  it('leaves a state from which a controller resumes with nothing to make up', () => {
    record();
    const writer = openLogWriter(logPath(folder.path, site.name));
    const { saved, after, settings } = writer.resume();
    writer.close();
    expect(saved?.atMs).toBe(toMs);
    expect(reviveState(saved?.state)).toBeDefined();
    expect(after).toEqual([]);
    expect(settings?.fillTimeS).toBe(1500);
  });

  it('leaves the loop as it stands, for a device to go on', () => {
    const { plantState } = record();
    keepPlant(folder.file('plant.json'), plantState);
    expect(loadPlant(folder.file('plant.json'), site)).toEqual({ ok: true, kept: plantState });
    expect(plantState.atMs).toBe(toMs);
    expect(plantState.plant.store.waterC[0]).toBeGreaterThan(25);
  });

  it('is the same for the same seed', () => {
    const once = record().plantState;
    folder.remove();
    expect(record().plantState).toEqual(once);
    folder.remove();
    expect(record({ seed: 2 }).plantState).not.toEqual(once);
  });

  it('says so when the log cannot be written', () => {
    const dataFolder = folder.file('a-file');
    keepPlant(dataFolder, record().plantState);
    expect(() => recordHistory({ site, dataFolder, fromMs, toMs, seed: 1 })).toThrow();
  });
});
