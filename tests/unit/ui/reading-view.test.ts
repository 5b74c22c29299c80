import { expect, test } from 'vitest';
import { numberFormats } from '../../../desktop/ui/format/numbers.ts';
import { viewReading } from '../../../desktop/ui/live/reading-view.ts';
import { readingCauses, type TrustedReading } from '../../../shared-types/readings.ts';

const formats = numberFormats({ temperature: 'C', heat: 'kWh' }, 'en');
const view = (reading: TrustedReading, lagMs = 0) =>
  viewReading('panOutletC', reading, formats, { lagMs, freshForMs: 20_000 });

test('a good reading is its number', () => {
  expect(view({ quality: 'good', value: 47.31, ageMs: 2000 })).toEqual({
    title: 'Pan outlet',
    look: 'fresh',
    value: '47.3\u00a0°C',
    note: undefined,
  });
});

test.each(readingCauses)('a reading that failed by %s shows no number, and why', (cause) => {
  const shown = view({ quality: 'failed', cause });
  expect(shown.look).toBe('failed');
  expect(`${shown.value} ${shown.note}`).not.toMatch(/\d/);
  expect(shown.note).not.toBe('');
});

test('an old reading says its age and looks it', () => {
  expect(view({ quality: 'good', value: 47.3, ageMs: 20_000 }).look).toBe('fresh');
  const old = view({ quality: 'good', value: 47.3, ageMs: 20_001 });
  expect(old.look).toBe('old');
  expect(old.note).toBe('20\u00a0s old');
});

test('a fresh reading in an old snapshot is old', () => {
  const old = view({ quality: 'good', value: 47.3, ageMs: 2000 }, 180_000);
  expect(old.look).toBe('old');
  expect(old.note).toBe('3\u00a0min old');
});

test('a doubtful reading says why, and its age when it is old as well', () => {
  expect(view({ quality: 'doubtful', value: 47.3, ageMs: 0, cause: 'jumped' })).toMatchObject({
    look: 'doubtful',
    note: 'doubtful: jumped too fast',
  });
  expect(view({ quality: 'doubtful', value: 47.3, ageMs: 60_000, cause: 'stuck' }).note).toBe(
    'doubtful: does not move, 1\u00a0min old',
  );
});
