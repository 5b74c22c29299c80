import { describe, expect, it } from 'vitest';
import { readRequest } from '../../../controller/engine/operator/read-request.ts';

const request = { id: 'request-1', ageMs: 5, lifeMs: 5000, operation: { kind: 'automatic' } };
const asked = (operation: unknown) => readRequest({ ...request, operation })?.operation;

describe('a request as it is given', () => {
  it('is what is named of it, and nothing beside', () => {
    expect(readRequest({ ...request, beside: 1 })).toEqual(request);
  });

  it.each([null, undefined, 7, 'automatic', [], {}])('that is %o is none', (given) => {
    expect(readRequest(given)).toBeUndefined();
    expect(readRequest({ ...request, operation: given })).toBeUndefined();
  });

  it.each([
    ['a'.repeat(8), true],
    ['a'.repeat(7), false],
    ['a'.repeat(64), true],
    ['a'.repeat(65), false],
    ['AZ-09-az', true],
    ['AZ_09_az', false],
    [' request-1', false],
    ['request-1 ', false],
    [12_345_678, false],
  ])('with the id %s is one: %s', (id, expected) => {
    expect(readRequest({ ...request, id }) !== undefined).toBe(expected);
  });

  it.each([
    [{ ageMs: -9_000_000 }, true],
    [{ ageMs: '5' }, false],
    [{ ageMs: Number.NaN }, false],
    [{ lifeMs: 1000 }, true],
    [{ lifeMs: 999 }, false],
    [{ lifeMs: 60_000 }, true],
    [{ lifeMs: 60_001 }, false],
    [{ lifeMs: '5000' }, false],
  ])('with %j is one: %s', (changes, expected) => {
    expect(readRequest({ ...request, ...changes }) !== undefined).toBe(expected);
  });

  it.each(['empty', 'automatic', 'commission', 'confirm'])('to %s needs nothing more', (kind) => {
    expect(asked({ kind, minutes: 5 })).toEqual({ kind });
  });

  it.each([
    ['run-pump', 1, 120],
    ['rest', 1, 1440],
  ])('to %s is for %d to %d minutes', (kind, least, most) => {
    for (const minutes of [least, most]) expect(asked({ kind, minutes })).toEqual({ kind, minutes });
    for (const minutes of [least - 0.01, most + 0.01, undefined, `${least}`])
      expect(asked({ kind, minutes })).toBeUndefined();
  });

  it('to shelve names an alarm, for 5 to 1440 minutes', () => {
    const shelve = { kind: 'shelve', alarm: 'dry-running' };
    for (const minutes of [5, 1440]) expect(asked({ ...shelve, minutes })).toEqual({ ...shelve, minutes });
    for (const minutes of [4.99, 1440.01, undefined]) expect(asked({ ...shelve, minutes })).toBeUndefined();
    expect(asked({ ...shelve, alarm: 'toString', minutes: 5 })).toBeUndefined();
  });

  it.each(['acknowledge', 'unshelve'])('to %s names an alarm', (kind) => {
    expect(asked({ kind, alarm: 'dry-running', beside: 1 })).toEqual({ kind, alarm: 'dry-running' });
    for (const alarm of ['toString', 'open-sesame', undefined, 7, ['dry-running']])
      expect(asked({ kind, alarm })).toBeUndefined();
  });
});
