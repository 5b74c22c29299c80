import { describe, expect, it } from 'vitest';
import { fillLiftM, impossibilities, impossibilityText } from '../../../../sim/plant/impossible.ts';
import { partsOf } from '../../../../sim/plant/parts.ts';
import { plumbedSite, plumbings } from '../../../support/plants.ts';
import { demoContent, type SiteContent, siteOf } from '../../../support/sites.ts';

const section = (name: string, changes: SiteContent) => ({
  [name]: { ...(demoContent()[name] as object), ...changes },
});
const partsWith = (changes: SiteContent) => partsOf(siteOf(demoContent(changes)));
const codes = (changes: SiteContent) => impossibilities(partsWith(changes)).map(({ code }) => code);

describe('a loop that can be built', () => {
  it.each(plumbings)('%s with outlet %s and drain %s has nothing against it', (plumbing, outlet, drain) => {
    expect(impossibilities(partsOf(plumbedSite(plumbing, outlet, drain)))).toEqual([]);
  });
});

describe('a pump that cannot lift', () => {
  // 1.2 m above a store of 1.3 m and 1420 L, of which 480 L and 3 L of pipe are lifted: the water sinks to
  // 417 L, so 1.2 + 1.3 (1 - 417/1420) = 2.118 m.
  const liftM = 2.118;

  it('is refused from the head on that the last water of a fill needs', () => {
    expect(Math.abs(fillLiftM(partsWith({})) - liftM)).toBeLessThan(0.001);
    const refusedM = (liftM - 0.01) * 0.75;
    const allowedM = (liftM + 0.01) * 0.75;
    expect(codes(section('pump', { ratedHeadM: refusedM }))).toEqual(['pump-cannot-lift']);
    expect(codes(section('pump', { ratedHeadM: allowedM }))).toEqual([]);
  });

  it('is told with both heights', () => {
    const [why] = impossibilities(partsWith(section('pump', { ratedHeadM: 0.9 })));
    expect(why).toMatchObject({ code: 'pump-cannot-lift' });
    expect(why && impossibilityText(why)).toMatch(/1\.20 m at no flow.* lifted 2\.12 m/);
  });

  it('counts the level of the reservoir in a drain-back loop', () => {
    // 0.8 m of 577 kg, of which 482 kg are lifted: 1.2 + 0.8 482/577.
    expect(Math.abs(fillLiftM(partsWith({ plumbing: 'reservoir' })) - 1.868)).toBeLessThan(0.001);
    expect(codes({ plumbing: 'reservoir', ...section('pump', { ratedHeadM: 1.3 }) })).toEqual([
      'pump-cannot-lift',
    ]);
    expect(codes({ plumbing: 'reservoir', ...section('pump', { ratedHeadM: 1.6 }) })).toEqual([]);
  });
});

describe('a pan below the top of the store', () => {
  const below = section('pan', { heightAboveStoreM: -0.4 });

  it('cannot empty by gravity, and is told by how much', () => {
    const [why] = impossibilities(partsWith(below));
    expect(why).toEqual({ code: 'pan-below-store', belowM: 0.4 });
    expect(why && impossibilityText(why)).toContain('0.40 m below');
    expect(codes({ ...below, outlet: 'low', drain: 'pump-stop' })).toEqual(['pan-below-store']);
  });
  it('may be emptied by a pump', () => {
    expect(codes({ ...below, drain: 'drain-pump' })).toEqual([]);
  });
  it('may stand level with it', () => {
    expect(codes(section('pan', { heightAboveStoreM: 0 }))).not.toContain('pan-below-store');
  });
});

describe('a return pipe that carries less than the pump brings', () => {
  it('is refused with both flows', () => {
    const narrow = partsOf(siteOf(demoContent()), { traits: { pipeInsideMm: 16 } });
    const wide = partsOf(siteOf(demoContent()), { traits: { pipeInsideMm: 20 } });
    const [why] = impossibilities(narrow);
    expect(why?.code).toBe('return-too-small');
    expect(why && impossibilityText(why)).toContain('24.0 L/min');
    expect(impossibilities(wide)).toEqual([]);
  });
});

describe('too little water', () => {
  it('is refused when the store cannot fill pan and pipes, and is told in litres', () => {
    // 480 L of pan and 6 L of pipes; 2 % of the store stay below its outlet.
    expect(codes(section('store', { volumeL: 500 }))).toEqual([]);
    const [why] = impossibilities(partsWith(section('store', { volumeL: 490 })));
    expect(why?.code).toBe('source-too-small');
    expect(why && impossibilityText(why)).toMatch(/hold 486 L, and only 480 L/);
  });
});

describe('a sheet that loses nothing to the air', () => {
  const losingDown = (insulationWM2K: number) =>
    impossibilities(partsOf(siteOf(demoContent()), { traits: { stillLossWM2K: 11.5, insulationWM2K } }));

  it('is refused as soon as all of its loss goes down, with both numbers', () => {
    expect(losingDown(11.4)).toEqual([]);
    const [why] = losingDown(11.5);
    expect(why).toEqual({ code: 'loss-all-down', downWM2K: 11.5, stillLossWM2K: 11.5 });
    expect(why && impossibilityText(why)).toMatch(/11\.5 W\/m2K of its 11\.5 W\/m2K/);
  });
});
