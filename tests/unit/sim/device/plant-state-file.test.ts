import { readdirSync, writeFileSync } from 'node:fs';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { keepPlant, loadPlant } from '../../../../sim/device/plant-state-file.ts';
import { createPlant } from '../../../../sim/plant/state.ts';
import { live, pumping } from '../../../support/plants.ts';
import { demoContent, siteOf } from '../../../support/sites.ts';
import { type TemporaryFolder, temporaryFolder } from '../../../support/temporary.ts';

const site = siteOf(demoContent());
let folder: TemporaryFolder;
beforeEach(() => {
  folder = temporaryFolder('plant');
});
afterEach(() => folder.remove());

function kept() {
  const plant = createPlant(site, { waterC: 25, panC: 20 });
  live(plant, pumping, 600);
  return { schema: 2, site: site.name, atMs: 12_345, plant } as const;
}

describe('a loop that is put away', () => {
  it('comes back to the last bit, and leaves no other file', () => {
    const before = kept();
    keepPlant(folder.file('deep/plant.json'), before);
    expect(loadPlant(folder.file('deep/plant.json'), site)).toEqual({ ok: true, kept: before });
    expect(readdirSync(folder.file('deep'))).toEqual(['plant.json']);
  });

  it('replaces the one before', () => {
    keepPlant(folder.file('p'), kept());
    keepPlant(folder.file('p'), { ...kept(), atMs: 99 });
    expect(loadPlant(folder.file('p'), site)).toMatchObject({ kept: { atMs: 99 } });
  });

  it('is not taken up when it is absent, damaged, of another site or of other parts', () => {
    expect(loadPlant(folder.file('none'), site)).toEqual({ ok: false, why: 'absent' });
    const whole = JSON.stringify(kept());
    const damages = [
      '',
      'null',
      '{}',
      whole.slice(0, 500),
      whole.replace('"core":{"massKg":[', '"core":{"massKg":[-'),
      '[]',
    ];
    for (const text of damages) {
      writeFileSync(folder.file('bad'), text);
      expect(loadPlant(folder.file('bad'), site), text.slice(0, 20)).toEqual({
        ok: false,
        why: 'unreadable',
      });
    }
    keepPlant(folder.file('other'), { ...kept(), site: 'elsewhere' });
    expect(loadPlant(folder.file('other'), site)).toEqual({ ok: false, why: 'of another site' });
    keepPlant(folder.file('same'), kept());
    const pump = { ratedFlowLMin: 12, ratedHeadM: 3, ratedPowerW: 60 };
    expect(loadPlant(folder.file('same'), siteOf(demoContent({ pump })))).toMatchObject({ ok: false });
  });
});
