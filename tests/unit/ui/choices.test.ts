import { expect, test } from 'vitest';
import { daysViewOf, defaultChoices } from '../../../desktop/ui/store/choices-store.ts';

test('days are looked at as somebody chose; else by the year, and by the month on a narrow screen', () => {
  expect(defaultChoices.daysView).toBeNull();
  expect(daysViewOf(null, false)).toBe('year');
  expect(daysViewOf(null, true)).toBe('calendar');
  expect(daysViewOf('year', true)).toBe('year');
  expect(daysViewOf('list', false)).toBe('list');
});
