import { describe, expect, it } from 'vitest';
import { finite, loose, readInput, readReading } from '../../../controller/engine/input.ts';

const nothing = { nowMs: 0, elapsedMs: null, localDay: null, readings: {}, feedback: null, request: null };
const feedback = { pumpFraction: 0.5, drainOpen: true, ageMs: 100 };

describe('an input', () => {
  it('is taken as it is when all of it is what it should be', () => {
    const input = {
      ...{ nowMs: 7, elapsedMs: 5000, localDay: '2031-06-21', request: { id: 'one' } },
      ...{ readings: { ambientC: { value: 1, ageMs: 2 } }, feedback },
    };
    expect(readInput(input)).toEqual(input);
  });

  it.each([null, undefined, 7, 'input', true, []])('that is %o counts as empty', (given) => {
    expect(readInput(given)).toEqual(nothing);
  });

  it.each([
    [{ nowMs: '7' }, {}],
    [{ nowMs: Number.NaN }, {}],
    [{ elapsedMs: 0 }, { elapsedMs: 0 }],
    [{ elapsedMs: -1 }, {}],
    [{ elapsedMs: '1' }, {}],
    [{ elapsedMs: Number.POSITIVE_INFINITY }, {}],
    [{ localDay: 20310621 }, {}],
    [{ localDay: ['2031-06-21'] }, {}],
    [{ localDay: '2031-6-21' }, {}],
    [{ localDay: '2031-06-2' }, {}],
    [{ localDay: '031-06-21' }, {}],
    [{ localDay: '2031-06-211' }, {}],
    [{ localDay: ' 2031-06-21' }, {}],
    [{ localDay: '2031-ab-21' }, {}],
    [{ localDay: '2031-06-cd' }, {}],
    [{ localDay: 'abcd-06-21' }, {}],
    [{ readings: null }, {}],
    [{ readings: 'none' }, {}],
    [{ request: undefined }, {}],
    [{ request: 0 }, { request: 0 }],
    [{ feedback: 'none' }, {}],
    [{ feedback: { ...feedback, ageMs: '0' } }, {}],
    [{ feedback: { ...feedback, pumpFraction: '1' } }, {}],
    [{ feedback: { ...feedback, drainOpen: false } }, { feedback: { ...feedback, drainOpen: false } }],
    [{ feedback: { ...feedback, drainOpen: 1 } }, { feedback: { ...feedback, drainOpen: null } }],
  ])('with %j reads as %j', (given, expected) => {
    expect(readInput(given)).toEqual({ ...nothing, ...expected });
  });
});

describe('a reading as it is given', () => {
  const unread = { value: null, ageMs: Number.POSITIVE_INFINITY, fault: null };

  it.each([
    [
      { value: 5, ageMs: 0 },
      { value: 5, ageMs: 0, fault: null },
    ],
    [
      { value: 5, ageMs: -1 },
      { ...unread, value: 5 },
    ],
    [
      { value: 5, ageMs: Number.NaN },
      { ...unread, value: 5 },
    ],
    [{ value: 5 }, { ...unread, value: 5 }],
    [
      { value: '5', ageMs: 3 },
      { ...unread, ageMs: 3 },
    ],
    [{ fault: 'open-circuit' }, { ...unread, fault: 'open-circuit' }],
    [{ fault: 'short-circuit' }, { ...unread, fault: 'short-circuit' }],
    [{ fault: 'unreadable' }, { ...unread, fault: 'unreadable' }],
    [{ fault: 'burnt' }, unread],
    [null, unread],
    [7, unread],
  ])('%j is %j', (given, expected) => {
    expect(readReading(given)).toEqual(expected);
  });

  it('may be a number that is none, which is judged later', () => {
    expect(readReading({ value: Number.NaN, ageMs: 0 })?.value).toBeNaN();
  });

  it('is nothing where there is none', () => {
    expect(readReading(undefined)).toBeUndefined();
  });
});

describe('what came as JSON', () => {
  it('is a record, or an empty one', () => {
    expect(loose({ a: 1 })).toEqual({ a: 1 });
    for (const given of [null, undefined, 7, 'text']) expect(loose(given)).toEqual({});
  });

  it('is a number only if it is finite', () => {
    expect([0, -1.5].every(finite)).toBe(true);
    expect([Number.NaN, Number.NEGATIVE_INFINITY, '0', null].some(finite)).toBe(false);
  });
});
