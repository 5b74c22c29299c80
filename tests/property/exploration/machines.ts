import type { Channel } from '../../../shared-types/channels.ts';
import type { Settings } from '../../../shared-types/settings.ts';
import type { Site } from '../../../shared-types/site.ts';
import { makeSite, quickSettings, type SiteKind } from '../../unit/engine/rig.ts';
import type { Invariant } from '../invariants/invariant.ts';
import { allInvariants } from '../invariants/table.ts';

/** Delays so short that each runs out within an event or two. */
export const shortSettings: Settings = {
  ...quickSettings,
  startDelayS: 10,
  stopDelayS: 10,
  fillDelayS: 10,
  fillTimeS: 20,
  fillTimeoutS: 40,
  drainTimeS: 30,
  leastOnS: 15,
  leastOffS: 15,
  emptyAfterMin: 5,
  frostReleaseMin: 5,
  dryRunS: 5,
};

const thermometers: readonly Channel[] = ['panOutletC', 'panSheetC', 'storeBottomC', 'storeTopC', 'ambientC'];

const machine = (kind: SiteKind, more: readonly Channel[]): readonly [string, Site] => [
  [kind, ...more].join(' with '),
  makeSite(kind, [...thermometers, ...more]),
];

/** The machines that are explored: every drain, and every kind of proof that water came or went. */
export const machines: readonly (readonly [string, Site])[] = [
  machine('corner', []),
  machine('pump-stop', ['flowLMin']),
  machine('drain-valve', []),
  machine('drain-pump', ['panLevelMm']),
];

/** Those that look at a step alone, so that they may be asked in the middle of anything. */
const asked: ReadonlySet<string> = new Set([
  'frost-opens-drain',
  'frost-store-stands',
  'frost-blind-opens-drain',
  'pump-only-when-pumping',
  'blind-is-safe',
  'restart-is-safe',
  'doubt-starts-nothing',
  'protection-stands',
  'operator-overrides-nothing',
  'operator-is-answered',
  'lease-ends',
  'full-store-takes-nothing',
  'outputs-have-reasons',
]);
export const askedAnywhere: readonly Invariant[] = allInvariants.filter(({ name }) => asked.has(name));
