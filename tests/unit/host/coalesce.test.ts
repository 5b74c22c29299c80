import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { createCoalescer } from '../../../desktop/host/coalesce.ts';

describe('createCoalescer', () => {
  beforeEach(() => void vi.useFakeTimers());
  afterEach(() => void vi.useRealTimers());

  it('sends the first mark at once and all that follow within the interval as one', () => {
    const send = vi.fn();
    const events = createCoalescer<string>(125, send);
    for (let mark = 0; mark < 20; mark++) events.mark('a');
    expect(send).toHaveBeenCalledTimes(1);
    vi.advanceTimersByTime(124);
    expect(send).toHaveBeenCalledTimes(1);
    vi.advanceTimersByTime(1);
    expect(send).toHaveBeenCalledTimes(2);
    vi.advanceTimersByTime(1000);
    expect(send).toHaveBeenCalledTimes(2);
  });

  it('sends at most eight a second under a flood', () => {
    const send = vi.fn();
    const events = createCoalescer<string>(125, send);
    for (let ms = 0; ms < 10_000; ms += 5) {
      events.mark('a');
      vi.advanceTimersByTime(5);
    }
    expect(send.mock.calls.length).toBeGreaterThan(75);
    expect(send.mock.calls.length).toBeLessThanOrEqual(81);
  });

  it('keeps keys apart and sends nothing after it was closed', () => {
    const send = vi.fn();
    const events = createCoalescer<string>(125, send);
    events.mark('a');
    events.mark('b');
    expect(send.mock.calls).toEqual([['a'], ['b']]);
    events.mark('a');
    events.close();
    expect(vi.getTimerCount()).toBe(0);
    vi.advanceTimersByTime(1000);
    expect(send).toHaveBeenCalledTimes(2);
  });
});
