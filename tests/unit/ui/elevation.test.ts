import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { labelPlaces } from '../../../desktop/ui/live/drawing/label-places.ts';
import { type Elevation, elevationOf } from '../../../desktop/ui/live/elevation.ts';
import {
  type LoopSizes,
  loopSizes,
  reservoirFill,
  storeFill,
} from '../../../desktop/ui/live/elevation-parts.ts';
import { panWater } from '../../../desktop/ui/live/pan-water.ts';
import { pipesOf } from '../../../desktop/ui/live/pipes.ts';
import { testSiteMessage } from '../../support/fake-monitor/site.ts';

const { site } = testSiteMessage();

const scaled = (least: number, most: number, unit: number) =>
  fc.integer({ min: Math.round(least / unit), max: Math.round(most / unit) }).map((n) => n * unit);

/** Sizes over the ranges of a site file. */
const anySizes: fc.Arbitrary<LoopSizes> = fc
  .record({
    panLengthM: scaled(0.45, 22, 0.05),
    wallHeightM: scaled(0.05, 0.3, 0.01),
    waterDepthM: scaled(0.005, 0.05, 0.005),
    fallM: scaled(0, 0.2, 0.01),
    panAboveStoreM: scaled(-2, 8, 0.1),
    storeHeightM: scaled(0.3, 4, 0.1),
    storeWidthM: scaled(0.3, 5, 0.1),
    reservoirWidthM: fc.option(scaled(0.2, 4, 0.1)),
  })
  .map(({ reservoirWidthM: widthM, ...sizes }) => ({
    ...sizes,
    // It is never drawn taller than the store.
    reservoir: widthM === null ? undefined : { heightM: Math.min(1, sizes.storeHeightM), widthM },
  }));
const anyWidth = fc.constantFrom(290, 360, 520, 800, 1100);

const corners = ({ pan, store, reservoir }: Elevation) => [
  pan,
  store,
  ...(reservoir === undefined ? [] : [reservoir]),
];

describe('a side view', () => {
  test('keeps pan and store inside the drawing, and in one scale', () => {
    fc.assert(
      fc.property(anySizes, anyWidth, (sizes, width) => {
        const view = elevationOf(sizes, width, 440);
        for (const box of corners(view)) {
          expect(box.left).toBeGreaterThanOrEqual(-0.01);
          expect(box.right).toBeLessThanOrEqual(width + 0.01);
          expect(box.top).toBeGreaterThanOrEqual(0);
          expect(box.bottom).toBeLessThanOrEqual(view.height + 0.01);
        }
        expect((view.pan.right - view.pan.left) / view.pixelsPerM).toBeCloseTo(sizes.panLengthM, 6);
        expect((view.store.right - view.store.left) / view.pixelsPerM).toBeCloseTo(sizes.storeWidthM, 6);
        expect((view.store.bottom - view.store.top) / view.pixelsPerM).toBeCloseTo(sizes.storeHeightM, 6);
      }),
    );
  });

  test('shows the water at its depth, stretched only where it could not be seen', () => {
    fc.assert(
      fc.property(anySizes, anyWidth, (sizes, width) => {
        const view = elevationOf(sizes, width, 440);
        const meanFloorY = (view.floorLeftY + view.floorRightY) / 2;
        const depthPx = meanFloorY - view.surfaceY;
        expect(depthPx).toBeCloseTo(sizes.waterDepthM * view.pixelsPerM * view.stretch, 6);
        expect(view.stretch).toBeGreaterThanOrEqual(1);
        expect(depthPx).toBeGreaterThanOrEqual(4.99);
        if (view.stretch > 1) expect(depthPx).toBeCloseTo(5, 6);
      }),
    );
  });

  test('puts a high pan over the store and a low one beside it', () => {
    const high = elevationOf(loopSizes(site), 800, 440);
    expect(high.onRoof).toBe(true);
    expect(high.store.top - high.roof.bottom).toBeCloseTo(0.9 * high.pixelsPerM, 6);
    const low = elevationOf({ ...loopSizes(site), panAboveStoreM: -0.8 }, 800, 440);
    expect(low.onRoof).toBe(false);
    expect(low.store.left).toBeGreaterThan(low.pan.right);
    expect(low.pan.bottom - low.store.top).toBeCloseTo(0.8 * low.pixelsPerM, 6);
  });

  test('leads the drain and the return of a roof pan into the store', () => {
    const view = elevationOf(loopSizes(site), 800, 440);
    const pipes = pipesOf(view, site);
    for (const pipe of [pipes.back, pipes.drain ?? []]) {
      const end = pipe.at(-1);
      expect(end?.x).toBeGreaterThan(view.store.left);
      expect(end?.x).toBeLessThan(view.store.right);
      expect(end?.y).toBeGreaterThan(view.store.top);
    }
    expect(pipes.feed[0]?.x).toBe(view.store.left);
    expect(pipes.feed.at(-1)?.x).toBeGreaterThan(view.pan.left);
  });

  test('draws a reservoir where the water of the pan goes there, with its exchanger to the store', () => {
    const sizes = loopSizes({ ...site, plumbing: 'reservoir' });
    expect(sizes.reservoir?.heightM).toBe(1);
    expect((sizes.reservoir?.widthM ?? 0) ** 2).toBeCloseTo(1.25 * 0.46, 10);
    expect(loopSizes(site).reservoir).toBeUndefined();
    for (const panAboveStoreM of [0.9, -0.8]) {
      const view = elevationOf({ ...sizes, panAboveStoreM }, 800, 440);
      const vessel = view.reservoir;
      if (vessel === undefined) throw new Error('no reservoir');
      const apartPx = Math.max(vessel.left - view.store.right, view.store.left - vessel.right);
      expect(apartPx).toBeCloseTo(0.4 * view.pixelsPerM, 6);
      const pipes = pipesOf(view, site);
      const inside = ({ x, y }: { x: number; y: number }) =>
        x >= vessel.left && x <= vessel.right && y >= vessel.top && y <= vessel.bottom;
      expect(inside(pipes.feed[0] as never)).toBe(true);
      expect(inside(pipes.back.at(-1) as never)).toBe(true);
      if (view.onRoof) expect(inside(pipes.drain?.at(-1) as never)).toBe(true);
      for (const pipe of [pipes.exchanger?.warm, [...(pipes.exchanger?.cool ?? [])].reverse()]) {
        expect([vessel.left, vessel.right]).toContain(pipe?.[0]?.x);
        expect([view.store.left, view.store.right]).toContain(pipe?.[1]?.x);
      }
    }
    expect(pipesOf(elevationOf(loopSizes(site), 800, 440), site).exchanger).toBeUndefined();
  });

  test('leads the return from the floor of a pan with a low outlet, else from its surface', () => {
    const view = elevationOf(loopSizes(site), 800, 440);
    expect(pipesOf(view, { drain: 'pump-stop', outlet: 'low' }).back[0]?.y).toBe(view.floorRightY - 2);
    expect(pipesOf(view, { drain: 'none', outlet: 'corner' }).back[0]?.y).toBe(view.surfaceY + 2);
  });

  test('draws a drain only where there is one', () => {
    const view = elevationOf(loopSizes(site), 800, 440);
    expect(pipesOf(view, { drain: 'none', outlet: 'corner' }).drain).toBeUndefined();
    expect(pipesOf(view, { drain: 'pump-stop', outlet: 'low' }).valve).toBeUndefined();
  });

  test('draws the radiator of a heat dump on the return, and only where there is one', () => {
    const view = elevationOf(loopSizes(site), 800, 440);
    expect(pipesOf(view, site).radiator).toBeUndefined();
    const { back, radiator } = pipesOf(view, { ...site, heatDump: { conductanceWK: 300 } });
    expect(radiator?.x).toBe(back[1]?.x);
    expect(radiator?.y).toBeGreaterThan(back[1]?.y ?? 0);
    expect(radiator?.y).toBeLessThan(back.at(-1)?.y ?? 0);
  });

  test('names the reservoir where there is room between store and return, else below the drawing', () => {
    const sizes = loopSizes({ ...site, plumbing: 'reservoir' });
    const place = (width: number, panAboveStoreM: number) => {
      const view = elevationOf({ ...sizes, panAboveStoreM }, width, 440);
      return labelPlaces(view, pipesOf(view, site)).reservoir;
    };
    expect(place(800, 1.9)).toBeDefined();
    expect(place(290, 1.9)).toBeUndefined();
    expect(place(800, 0.3)).toBeDefined();
    expect(place(800, -0.8)).toBeUndefined();
  });

  test('keeps every label inside the drawing and clear of the others', () => {
    // Some 9 px a character: generous for the longest title and value that stand there.
    const reservoirSites = [site, { ...site, plumbing: 'reservoir' as const }];
    const widths = {
      reservoir: 72,
      inlet: 66,
      sheet: 64,
      outlet: 76,
      storeTop: 70,
      storeMiddle: 84,
      storeBottom: 84,
    };
    for (const [of, panAboveStoreM] of reservoirSites.flatMap((of) =>
      [1.9, 0.9, 0.1, -0.8].map((above) => [of, above] as const),
    ))
      for (const width of [290, 306, 520, 800]) {
        const view = elevationOf({ ...loopSizes(of), panAboveStoreM }, width, 440);
        const places = labelPlaces(view, pipesOf(view, site));
        const boxes = Object.entries(widths).flatMap(([name, px]) => {
          const place = places[name as keyof typeof widths];
          if (place === undefined) return [];
          const share = { start: 0, middle: 0.5, end: 1 }[place.anchor];
          const left = place.x - px * share;
          return [{ left, right: left + px, top: place.y - 12, bottom: place.y + 21 }];
        });
        for (const [index, box] of boxes.entries()) {
          expect(box.left).toBeGreaterThanOrEqual(0);
          expect(box.right).toBeLessThanOrEqual(width);
          expect(box.bottom).toBeLessThanOrEqual(view.height);
          for (const other of boxes.slice(index + 1)) {
            const apart =
              box.right <= other.left ||
              other.right <= box.left ||
              box.bottom <= other.top ||
              other.bottom <= box.top;
            expect(apart).toBe(true);
          }
        }
      }
  });
});

describe('water in the pan', () => {
  const view = elevationOf(loopSizes(site), 800, 440);
  const area = (points: readonly { x: number; y: number }[]) =>
    Math.abs(
      points.reduce((sum, { x, y }, index) => {
        const next = points[(index + 1) % points.length] as { x: number; y: number };
        return sum + (x * next.y - next.x * y) / 2;
      }, 0),
    );
  test('is nothing when drained', () => {
    expect(panWater(view, 0)).toEqual([]);
  });
  test('has the area of its mean depth when full', () => {
    const expected = site.pan.waterDepthM * loopSizes(site).panLengthM * view.pixelsPerM ** 2 * view.stretch;
    expect(area(panWater(view, 1))).toBeCloseTo(expected, 3);
  });
  test('gathers at the low end when there is little', () => {
    const little = panWater(view, 0.3);
    expect(Math.min(...little.map((point) => point.x))).toBeGreaterThan(view.pan.left + 20);
    expect(Math.max(...little.map((point) => point.x))).toBe(view.pan.right);
    expect(area(little)).toBeLessThan(area(panWater(view, 1)) / 2);
  });
});

describe('water in the store', () => {
  test('is what the pan does not hold', () => {
    expect(storeFill(site, 'empty', undefined)).toBeCloseTo(900 / 1420, 10);
    expect(storeFill(site, 'full', undefined)).toBeCloseTo((900 - 460) / 1420, 10);
  });
  test('is what its level sensor says, if there is one', () => {
    expect(storeFill(site, 'full', 650)).toBeCloseTo(0.5, 10);
    expect(storeFill(site, 'full', 9000)).toBe(1);
    expect(storeFill(site, 'full', -20)).toBe(0);
  });
  test('of a reservoir is what the pan does not hold, and a tenth that stays', () => {
    expect(reservoirFill('empty')).toBeCloseTo(0.9, 10);
    expect(reservoirFill('full')).toBeCloseTo(0.1, 10);
    expect(reservoirFill('part')).toBeCloseTo(0.5, 10);
  });
  test('does not change with the pan where a reservoir takes its water', () => {
    const other = { ...site, plumbing: 'reservoir' as const };
    expect(storeFill(other, 'full', undefined)).toBe(storeFill(other, 'empty', undefined));
  });
});
