import { describe, expect, test } from 'vitest';
import { type EpisodeFilter, episodesOf, fittingEpisodes } from '../../../desktop/ui/alarms/episodes.ts';
import type { LogEvent } from '../../../shared-types/log.ts';

const event = (atMs: number, kind: LogEvent['kind'], alarm = 'flow-low', values: object = {}): LogEvent => ({
  atMs,
  kind,
  text: `${alarm} at ${atMs}.`,
  values: { alarm, priority: 'soon', ...values },
});

/** Given in the order of time, as the log gives them: the newest first. */
const episodes = (...events: LogEvent[]) => episodesOf(events.toReversed());

describe('episodes of alarms', () => {
  test('hold raising, seeing, shelving and return of one alarm', () => {
    expect(
      episodes(
        event(1, 'alarm-raised'),
        event(2, 'alarm-acknowledged'),
        event(3, 'alarm-shelved'),
        event(4, 'alarm-unshelved'),
        event(5, 'alarm-returned'),
      ),
    ).toEqual([
      {
        code: 'flow-low',
        priority: 'soon',
        title: 'Less water flows than it should',
        text: 'flow-low at 1.',
        raisedMs: 1,
        acknowledgedMs: 2,
        returnedMs: 5,
        shelved: 1,
        newestMs: 5,
      },
    ]);
  });

  test('begin anew with each raising, the newest first, also when no return was logged between', () => {
    const found = episodes(
      event(1, 'alarm-raised'),
      event(2, 'alarm-returned'),
      event(3, 'alarm-raised'),
      event(4, 'alarm-raised', 'leak'),
      event(5, 'alarm-raised'),
    );
    expect(found.map(({ code, raisedMs, returnedMs }) => [code, raisedMs, returnedMs])).toEqual([
      ['flow-low', 5, null],
      ['leak', 4, null],
      ['flow-low', 3, null],
      ['flow-low', 1, 2],
    ]);
  });

  test('count what is seen after the return to the alarm that returned', () => {
    const [found] = episodes(
      event(1, 'alarm-raised'),
      event(2, 'alarm-returned'),
      event(3, 'alarm-acknowledged'),
    );
    expect(found).toMatchObject({ raisedMs: 1, returnedMs: 2, acknowledgedMs: 3 });
  });

  test('without a raising in what was read say so', () => {
    expect(episodes(event(7, 'alarm-returned'))[0]).toMatchObject({ raisedMs: null, returnedMs: 7 });
  });

  test('leave out alarms that this version does not know, and mend a priority that is none', () => {
    expect(episodes(event(1, 'alarm-raised', 'eclipse'))).toEqual([]);
    expect(episodes(event(1, 'alarm-raised', 'leak', { priority: 7 }))[0]?.priority).toBe('soon');
    expect(episodes(event(1, 'alarm-raised', 'flow-low', { priority: null }))[0]?.priority).toBe(
      'when-convenient',
    );
  });
});

describe('a choice among episodes', () => {
  const dayMs = 86_400_000;
  const nowMs = 100 * dayMs;
  const all = episodes(
    event(nowMs - 30 * dayMs, 'alarm-raised', 'leak'),
    event(nowMs - 7 * dayMs - 1, 'alarm-raised', 'frost-danger', { priority: 'urgent' }),
    event(nowMs - 7 * dayMs, 'alarm-raised', 'flow-low'),
  );
  const fitting = (filter: Partial<EpisodeFilter>) =>
    fittingEpisodes(all, { priority: 'any', words: '', span: 'all', ...filter }, nowMs).map(
      ({ code }) => code,
    );

  test('without any wish is all of them', () => {
    expect(fitting({})).toEqual(['flow-low', 'frost-danger', 'leak']);
  });
  test('by priority', () => {
    expect(fitting({ priority: 'urgent' })).toEqual(['frost-danger']);
    expect(fitting({ priority: 'when-convenient' })).toEqual([]);
  });
  test('by days back, to the instant', () => {
    expect(fitting({ span: '1' })).toEqual([]);
    expect(fitting({ span: '7' })).toEqual(['flow-low']);
    expect(fitting({ span: '30' })).toEqual(['flow-low', 'frost-danger', 'leak']);
  });
  test('by words in title or text, in any order and case', () => {
    expect(fitting({ words: 'WATER frost' })).toEqual(['frost-danger']);
    expect(fitting({ words: '  flow-low ' })).toEqual(['flow-low']);
    expect(fitting({ words: 'water eclipse' })).toEqual([]);
  });
});
