import { beforeAll, describe, expect, test } from 'vitest';
import { initialState } from '../../../../../controller/engine/index.ts';
import { daySkyOf } from '../../../../../sim/identify/day-sky.ts';
import { type PossibleLoop, usualLoop } from '../../../../../sim/identify/possible-loop.ts';
import { type LoggedSpan, readSpan } from '../../../../../sim/identify/world/span.ts';
import { type LoggedWorld, worldOf } from '../../../../../sim/identify/world/world.ts';
import { liveDay } from '../../../../../sim/replay/live-again/live-day.ts';
import { possibleLoops, underTheirSkies } from '../../../../../sim/replay/live-again/possible-loops.ts';
import { counterfactualCase } from '../../../../support/counterfactual-cases.ts';

const one = counterfactualCase(7, 'full', 2);
const read = readSpan(one.logged.reader, one.logged.days.at(-1) as string);
if (!read.ok) throw new Error(read.why);
const { span } = read;

const heatIn = (world: LoggedWorld) =>
  liveDay({ span, world, state: initialState(), settingsAt: () => one.settings, seed: 1 });

describe('loops under their skies', () => {
  const loops = possibleLoops(null, 0, 7);
  let told: readonly PossibleLoop[];

  beforeAll(() => {
    told = underTheirSkies(span, [...loops, ...Array.from({ length: 240 }, () => usualLoop)], 7);
  });

  test('begin with the most likely sky of the first', () => {
    expect(told[0]).toEqual({ ...usualLoop, sky: daySkyOf(span, usualLoop)?.of(usualLoop) });
  });

  test('are the same for the same seed', () => {
    expect(underTheirSkies(span, [...loops, usualLoop], 7)[1]).toEqual(told[1]);
    expect(underTheirSkies(span, [...loops, usualLoop], 8)[1]).not.toEqual(told[1]);
  });

  test('scatter about it all day long by what the heat may be off by, and by what the pan did not tell', () => {
    const sky = daySkyOf(span, usualLoop);
    const first = told[0]?.sky.moreWM2 ?? [];
    for (const node of first.keys()) {
      const apart = told.slice(1).map(({ sky: own }) => (own.moreWM2[node] ?? 0) - (first[node] ?? 0));
      const variance = apart.reduce((sum, value) => sum + value ** 2, 0) / apart.length;
      const expected = 25 + (sky?.covariance[node + 1]?.[node + 1] ?? 0);
      expect(variance / expected).toBeGreaterThan(0.7);
      expect(variance / expected).toBeLessThan(1.4);
    }
  });

  test('are off by the heat balance all day long alike', () => {
    const covariance =
      daySkyOf(span, usualLoop)
        ?.covariance.slice(1)
        .map((row) => row.slice(1)) ?? [];
    const nodes = covariance.length;
    const meanOf = (values: readonly number[]) =>
      values.reduce((sum, value) => sum + value, 0) / values.length;
    const first = meanOf(told[0]?.sky.moreWM2 ?? []);
    const apart = told.slice(1).map(({ sky }) => meanOf(sky.moreWM2) - first);
    const variance = meanOf(apart.map((value) => value ** 2));
    const byPan = covariance.flat().reduce((sum, entry) => sum + entry, 0) / nodes ** 2;
    expect(variance / (25 + byPan)).toBeGreaterThan(0.75);
    expect(variance / (25 + byPan)).toBeLessThan(1.3);
  });

  test('keep their own where the pan tells nothing', () => {
    const { irradianceWM2: _, ...values } = span.minutes.values;
    const dark: LoggedSpan = { ...span, minutes: { ...span.minutes, values } };
    expect(underTheirSkies(dark, loops, 7)).toBe(loops);
  });

  test('bring nearly the same heat, whatever efficiency they are taken for', () => {
    const better: PossibleLoop = { ...usualLoop, traits: { opticalEfficiency: 0.95 } };
    const worse: PossibleLoop = { ...usualLoop, traits: { opticalEfficiency: 0.85 } };
    const apartJ = ([a, b]: readonly PossibleLoop[]) =>
      heatIn(worldOf(span, a)).heatHomeJ - heatIn(worldOf(span, b)).heatHomeJ;
    const plainJ = apartJ([better, worse]);
    expect(plainJ).toBeGreaterThan(0);
    expect(Math.abs(apartJ(underTheirSkies(span, [better, worse], 7).map(withoutScatter)))).toBeLessThan(
      0.6 * plainJ,
    );
  });

  /** The most likely sky in place of a drawn one. */
  const withoutScatter = (loop: PossibleLoop): PossibleLoop => ({
    ...loop,
    sky: daySkyOf(span, loop)?.of(loop) ?? loop.sky,
  });
});

test('what the store showed beyond all draws is lived again', () => {
  const world = worldOf(span);
  const noonMs = span.dayFromMs + 12 * 3_600_000;
  const later = heatIn({
    ...world,
    nudgeAt: (atMs) => (atMs === noonMs ? Array.from({ length: 12 }, () => 20) : undefined),
  }).curves;
  const plain = heatIn({ ...world, nudgeAt: () => undefined }).curves;
  const fiveLater = later.atMs.indexOf(noonMs + 5 * 60_000);
  const gained =
    (later.series.storeTopC?.[fiveLater] as number) - (plain.series.storeTopC?.[fiveLater] as number);
  expect(gained).toBeGreaterThan(15);
});

test('what the store shows beyond all draws is told at the ends of their stretches', () => {
  const { logged } = counterfactualCase(4, 'full', 2);
  const other = readSpan(logged.reader, logged.days.at(-1) as string);
  if (!other.ok) throw new Error(other.why);
  const { dayFromMs } = other.span;
  const { nudgeAt } = worldOf(other.span);
  const minutes = Array.from({ length: 1440 }, (_, minute) => dayFromMs + (minute + 1) * 60_000);
  const told = minutes.filter((ms) => nudgeAt(ms) !== undefined);
  expect(told.length).toBeGreaterThan(0);
  for (const ms of told) expect((ms - dayFromMs) % 600_000).toBe(0);
  expect(nudgeAt(told[0] as number)).toHaveLength(12);
});
