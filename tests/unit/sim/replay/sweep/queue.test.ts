import { describe, expect, it } from 'vitest';
import { createQueue } from '../../../../../sim/replay/sweep/queue.ts';

describe('the queue of a sweep', () => {
  it('stays on the day that an asker has made ready, then goes to one that nobody has begun', () => {
    const queue = createQueue([
      [0, 1, 2, 3, 4],
      [0, 1],
    ]);
    expect(queue.next(undefined)).toEqual({ day: 0, points: [0, 1, 2, 3] });
    expect(queue.next(undefined)).toEqual({ day: 1, points: [0, 1] });
    expect(queue.next(0)).toEqual({ day: 0, points: [4] });
    expect(queue.next(0)).toBeUndefined();
  });

  const of = (length: number) => Array.from({ length }, (_, index) => index);

  it('helps where most is left when every day is begun', () => {
    const queue = createQueue([of(5), of(20), of(18)]);
    for (let asker = 0; asker < 3; asker++) queue.next(undefined);
    expect(queue.next(undefined)?.day).toBe(1);
    expect(queue.next(0)?.day).toBe(0);
    expect(queue.next(0)?.day).toBe(2);
  });

  it('leaves the rest of a day to whoever has it ready, where making it ready again would take longer', () => {
    const queue = createQueue([of(16), of(4)]);
    queue.next(undefined);
    queue.next(undefined);
    expect(queue.next(1)).toEqual({ day: 0, points: [4, 5, 6, 7] });
    expect(queue.next(1)).toBeUndefined();
    expect(queue.next(0)).toEqual({ day: 0, points: [8, 9, 10, 11] });
  });

  it('gives nothing more of a day that is dropped', () => {
    const queue = createQueue([[0, 1, 2, 3, 4], [0]]);
    queue.next(undefined);
    queue.drop(0);
    expect(queue.next(0)).toEqual({ day: 1, points: [0] });
    expect(queue.next(0)).toBeUndefined();
  });
});
