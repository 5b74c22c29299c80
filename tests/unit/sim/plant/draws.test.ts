import { expect, it } from 'vitest';
import { drawnShareH, drawProfiles } from '../../../../sim/plant/draws.ts';

it.each(drawProfiles)('the draw profile %s is a whole day of water, or none', (profile) => {
  let share = 0;
  for (let s = 0; s < 86_400; s += 10) share += drawnShareH(profile, s / 3600) * (10 / 3600);
  expect(share).toBeCloseTo(profile === 'none' ? 0 : 1, 9);
});

it('a nursery waters by day, a hatchery always, a wash-house in the morning', () => {
  const share = (solarHour: number) => drawProfiles.map((profile) => drawnShareH(profile, solarHour) > 0);
  expect(share(3)).toEqual([false, false, true, false]);
  expect(share(7.5)).toEqual([true, true, true, false]);
  expect(share(10)).toEqual([false, true, true, false]);
});
