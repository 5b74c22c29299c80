import { describe, expect, it } from 'vitest';
import { createFaultBoard, raiseWishes } from '../../../../sim/device/fault-board.ts';
import { parseFaultWish } from '../../../../sim/device/fault-text.ts';
import { demoContent, siteOf } from '../../../support/sites.ts';

const site = siteOf(demoContent());
const dead = { name: 'pump-dead', size: 0 } as const;

function wish(text: string) {
  const parsed = parseFaultWish(text);
  if (!parsed.ok) throw new Error(parsed.why);
  return parsed.value;
}

describe('the board of faults', () => {
  it('knows how long each has been there, and takes it down at its end', () => {
    const board = createFaultBoard(site);
    board.raise(dead, 10_000, 20_000);
    board.raise({ name: 'pan-leak', size: 5 }, 15_000);
    expect(board.activeAt(9_999)).toEqual([]);
    expect(board.activeAt(10_000)).toEqual([{ ...dead, forS: 0 }]);
    expect(board.activeAt(19_000)).toEqual([
      { ...dead, forS: 9 },
      { name: 'pan-leak', size: 5, forS: 4 },
    ]);
    expect(board.activeAt(20_000)).toEqual([{ name: 'pan-leak', size: 5, forS: 5 }]);
  });

  it('makes nothing while no fault is there', () => {
    const board = createFaultBoard(site);
    const none = board.activeAt(0);
    board.raise(dead, 10_000, 20_000);
    expect(board.activeAt(5_000)).toBe(none);
    expect(board.activeAt(30_000)).toBe(none);
  });

  it('holds one fault of a name and channel, the newest', () => {
    const board = createFaultBoard(site);
    const offset = { name: 'sensor-offset', channel: 'panOutletC', size: 1 } as const;
    board.raise(offset, 0);
    board.raise({ ...offset, channel: 'storeTopC' }, 0);
    board.raise({ ...offset, size: 9 }, 1000);
    expect(board.activeAt(1000).map(({ channel, size }) => [channel, size])).toEqual([
      ['storeTopC', 1],
      ['panOutletC', 9],
    ]);
    board.clear({ name: 'sensor-offset', channel: 'panOutletC' });
    expect(board.activeAt(1000)).toHaveLength(1);
  });

  it('silences every channel of a topic, and clears them together', () => {
    const sensors = {
      panOutletC: { topic: 'roof/a', pointer: '/out', unit: 'C' },
      panSheetC: { topic: 'roof/a', pointer: '/sheet', unit: 'C' },
      storeBottomC: { topic: 'roof/b', pointer: '/bottom', unit: 'C' },
    };
    const board = createFaultBoard(siteOf(demoContent({ sensors })));
    board.raise({ name: 'topic-silent', channel: 'panSheetC', size: 0 }, 0);
    expect(board.activeAt(0).map(({ channel }) => channel)).toEqual(['panOutletC', 'panSheetC']);
    board.clear({ name: 'topic-silent', channel: 'panSheetC' });
    expect(board.activeAt(0)).toEqual([]);
  });

  it('takes wishes by the clocks of the site', () => {
    const board = createFaultBoard(site);
    const noonMs = Date.UTC(2031, 5, 21, 12);
    const hourMs = 3_600_000;
    const wishes = ['pump-dead', 'half-flow@14:00~14:30', 'pan-leak~13:00', 'sheet-dirty@2031-06-20T12:00'];
    // The Azores have UTC as their summer time.
    raiseWishes(board, wishes.map(wish), noonMs + 1, 'Atlantic/Azores');
    const at = (hours: number) => board.activeAt(noonMs + hours * hourMs).map(({ name }) => name);
    expect(at(0)).toEqual(['sheet-dirty']);
    expect(at(0.5)).toEqual(['pump-dead', 'pan-leak', 'sheet-dirty']);
    expect(at(1.5)).toEqual(['pump-dead', 'sheet-dirty']);
    expect(at(2.2)).toEqual(['pump-dead', 'half-flow', 'sheet-dirty']);
    expect(at(2.5)).toEqual(['pump-dead', 'sheet-dirty']);
    expect(board.activeAt(noonMs)[0]?.forS).toBe(86_400);
  });

  it('lets a minute that runs already come now, so that what comes once comes', () => {
    const board = createFaultBoard(site);
    const noonMs = Date.UTC(2031, 5, 21, 12);
    raiseWishes(board, [wish('sheet-snowed@12:00')], noonMs + 1, 'Atlantic/Azores');
    expect(board.activeAt(noonMs + 1)[0]?.forS).toBe(0);
  });
});
