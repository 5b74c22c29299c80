import { expect, test } from 'vitest';
import { minuteRanges, parseMinutes, planRequest } from '../../../desktop/ui/live/request-plan.ts';
import { outcomeText } from '../../../desktop/ui/shell/outcome-text.ts';
import { operationSchema } from '../../../shared-types/engine.ts';

test.each([
  ['15', 15],
  [' 15 ', 15],
  ['1', 1],
  ['120', 120],
  ['121', undefined],
  ['0', undefined],
  ['', undefined],
  ['1e2', undefined],
  ['-5', undefined],
  ['7.5', undefined],
  ['0x10', undefined],
])('minutes to run the pump, typed as "%s": %s', (text, minutes) => {
  expect(parseMinutes(text, minuteRanges['run-pump'])).toBe(minutes);
});

test.each(['run-pump', 'rest'] as const)(
  'the ends of the range of %s are what the controller takes',
  (kind) => {
    const { least, most } = minuteRanges[kind];
    const takes = (minutes: number) => operationSchema.safeParse({ kind, minutes }).success;
    expect([least - 1, least, most, most + 1].map(takes)).toEqual([false, true, true, false]);
  },
);

test.each(['run-pump', 'empty', 'rest', 'automatic'] as const)('%s asks for what it says', (kind) => {
  const plan = planRequest(kind, 25);
  expect(operationSchema.parse(plan.operation).kind).toBe(kind);
  if ('minutes' in plan.operation) expect(plan.says).toContain('25 min');
});

test('only what has a consequence is asked twice', () => {
  const twice = (['run-pump', 'empty', 'rest', 'automatic'] as const).map(
    (kind) => planRequest(kind, 25).consequence !== undefined,
  );
  expect(twice).toEqual([true, true, true, false]);
});

test('what came of a request is said in the words of whoever answered', () => {
  const answer = { id: 'request-1', accepted: true, code: 'accepted', text: 'Accepted.' } as const;
  expect(outcomeText({ state: 'none' })).toBe('');
  expect(outcomeText({ state: 'answered', answer })).toBe('Accepted.');
  expect(outcomeText({ state: 'answered', answer: { ...answer, leaseMs: 900_000 } })).toBe(
    'Accepted. It ends by itself after 15\u00a0min.',
  );
  const problem = { severity: 'error', text: 'Nobody listens.', tip: 'Look at the broker.' } as const;
  expect(outcomeText({ state: 'unanswered', problem })).toBe(
    'No answer. Nobody listens. Look at the broker.',
  );
});
