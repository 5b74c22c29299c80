import { describe, expect, it, vi } from 'vitest';
import type { LogReader } from '../../../controller/log/log.ts';
import { answerQuestion } from '../../../desktop/host/history-questions.ts';
import { curves } from './samples.ts';

const never = () => {
  throw new Error('not asked for');
};
const replays = { replayDay: never, whatIf: never, allowedHeat: never, keptFit: never };
const reader = (parts: Partial<LogReader>) => parts as LogReader;

describe('answerQuestion', () => {
  it('gives a day that the wire can carry', () => {
    const log = reader({ day: () => curves(17_280, (row) => row) });
    const reply = answerQuestion(log, 'day', { site: 'a', day: '2031-06-21' }, replays);
    expect(reply.ok && reply.result.atMs.length).toBe(3000);
  });

  it('counts recent hours back from the newest record, which belongs to them', () => {
    const span = vi.fn(() => curves(2, (row) => row));
    answerQuestion(reader({ newestMs: () => 7_200_000, span }), 'recent', { site: 'a', hours: 1.5 }, replays);
    expect(span).toHaveBeenCalledWith(1_800_000, 7_200_001);
  });

  it.each([
    [
      'of an empty log',
      reader({ newestMs: () => null }),
      'recent',
      { site: 'a', hours: 1 },
      'note',
      'Nothing',
    ],
    [
      'of a day that is not kept',
      reader({
        day() {
          throw new RangeError('nothing is kept of 2031-06-20');
        },
      }),
      'day',
      { site: 'a', day: '2031-06-20' },
      'note',
      '2031-06-20',
    ],
    ['of a log that fails', reader({ days: never }), 'days', { site: 'a' }, 'error', 'not asked for'],
    [
      'of a log from another version',
      reader({ events: () => [{ kind: 'eclipse' }] as never }),
      'events',
      { site: 'a', limit: 5 },
      'error',
      'this version',
    ],
  ] as const)(
    'says in words what is wrong with a question %s',
    (_what, log, method, params, severity, words) => {
      expect(answerQuestion(log, method, params as never, replays)).toMatchObject({
        ok: false,
        problem: { severity, text: expect.stringContaining(words) },
      });
    },
  );
});
