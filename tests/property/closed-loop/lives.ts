import fc from 'fast-check';
import type { Channel } from '../../../shared-types/channels.ts';
import { defaultSettings, type Settings } from '../../../shared-types/settings.ts';
import type { Site } from '../../../shared-types/site.ts';
import { declarationOf, type FaultName, faultNames } from '../../../sim/plant/faults.ts';
import { dayKinds } from '../../../sim/weather/day-kinds.ts';
import { givenSites } from '../../support/books.ts';
import { plumbedSite, plumbings } from '../../support/plants.ts';
import type { Happening, Life, TimedFault } from './life.ts';

/** The loops that come with the project, and one of every plumbing, outlet and drain. */
const sites: readonly Site[] = [
  ...givenSites.map(([, site]) => site),
  ...plumbings.map(([plumbing, outlet, drain]) => plumbedSite(plumbing, outlet, drain)),
];

export function settingsOf(site: Site): Settings {
  const given = Object.entries(site.settings ?? {}).filter(([, value]) => value !== undefined);
  return { ...defaultSettings, ...Object.fromEntries(given) };
}

export type FaultKind = Omit<TimedFault, 'fromH' | 'lastsH'>;

/** Every fault that a loop can have, at every sensor that it has. */
function faultKindsOf({ sensors }: Site): FaultKind[] {
  const channels = Object.keys(sensors) as Channel[];
  return faultNames.flatMap((name) => kindsOf(name, channels));
}

function kindsOf(name: FaultName, channels: readonly Channel[]): FaultKind[] {
  const { on, size } = declarationOf(name);
  const fault = { name, size: size?.default ?? 0 };
  if (on === 'sensor') return channels.map((channel) => ({ ...fault, channel }));
  if (on !== 'two-sensors') return [fault];
  const swapped = channels.filter((channel) => channel.startsWith('pan') && channel.endsWith('C'));
  return swapped.map((channel) => ({ ...fault, channel, other: 'storeBottomC' }));
}

const happeningDraw: fc.Arbitrary<Happening> = fc.record({
  atH: fc.integer({ min: 0, max: 170 }).map((n) => n / 10),
  what: fc.oneof(
    fc.constant({ kind: 'restart' as const }),
    fc.record({ kind: fc.constant('gone' as const), minutes: fc.integer({ min: 1, max: 120 }) }),
    fc.record({ kind: fc.constant('clock' as const), jumpH: fc.integer({ min: -30, max: 30 }) }),
    fc.record({
      kind: fc.constant('request' as const),
      operation: fc.constantFrom(
        { kind: 'run-pump' as const, minutes: 60 },
        { kind: 'rest' as const, minutes: 600 },
        { kind: 'empty' as const },
        { kind: 'automatic' as const },
      ),
    }),
  ),
});

/** Length of the lives that are drawn [h]. */
const hours = 18;

/** A life of any loop in any weather, with up to two faults and some happenings. */
export const lifeDraw: fc.Arbitrary<Life> = fc.constantFrom(...sites).chain((site) => {
  const faultDraw = fc
    .record({
      kind: fc.constantFrom(...faultKindsOf(site)),
      fromH: fc.integer({ min: 0, max: 12 }),
      lastsH: fc.constantFrom(1, 4, 100),
    })
    .map(({ kind, ...times }): TimedFault => ({ ...kind, ...times }));
  return fc.record({
    site: fc.constant(site),
    settings: fc.constant(settingsOf(site)),
    seed: fc.integer({ min: 1, max: 1000 }),
    startMs: fc
      .record({ month: fc.integer({ min: 0, max: 11 }), hour: fc.integer({ min: 0, max: 23 }) })
      .map(({ month, hour }) => Date.UTC(2031, month, 15, hour)),
    hours: fc.constant(hours),
    kinds: fc.array(fc.constantFrom(...dayKinds), { minLength: 1, maxLength: 2 }),
    storeC: fc.integer({ min: 8, max: 64 }),
    faults: fc.array(faultDraw, { maxLength: 2 }),
    happenings: fc.array(happeningDraw, { maxLength: 3 }),
  });
});

/** Faults one after the other, two hours apart, through a clear day and a frosty night. */
export function lifeWith(site: Site, faults: readonly FaultKind[], seed: number): Life {
  return {
    site,
    settings: settingsOf(site),
    seed,
    startMs: Date.UTC(2031, seed % 2 === 0 ? 3 : 9, 15, 10),
    hours: 20,
    kinds: ['frost-after-sun'],
    storeC: 20 + (seed % 45),
    faults: faults.map((fault, at) => ({ ...fault, fromH: 1 + 2 * at, lastsH: 100 })),
    happenings: [],
  };
}

/**
 * One life for every ordered choice of `together` faults, by number: 0 up to `choicesOf(together)`. Loop and sensor
 * change from one to the next.
 */
export function chosenLife(number: number, together: number, seed: number): Life {
  const site = sites[(number * 7 + seed) % sites.length] as Site;
  const channels = Object.keys(site.sensors) as Channel[];
  const faults = Array.from({ length: together }, (_, place) => {
    const name = faultNames[Math.floor(number / faultNames.length ** place) % faultNames.length];
    const kinds = kindsOf(name as FaultName, channels);
    return kinds[(number + seed + place) % kinds.length] as FaultKind;
  });
  return lifeWith(site, faults, seed + number);
}

export function choicesOf(together: number): number {
  return faultNames.length ** together;
}
