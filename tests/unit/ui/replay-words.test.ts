import { describe, expect, test } from 'vitest';
import { numberFormats } from '../../../desktop/ui/format/numbers.ts';
import { inTitles, titleOf, unitText } from '../../../desktop/ui/replay/fit/fit-words.ts';
import { reasonTitle } from '../../../desktop/ui/replay/reason-title.ts';
import { verdictText } from '../../../desktop/ui/replay/verdict.ts';
import { doneOf, progressText } from '../../../desktop/ui/shell/progress-text.ts';
import { jobStages } from '../../../shared-types/jobs.ts';
import { replayReportSchema } from '../../../shared-types/log.ts';
import { testReplay } from '../../support/fake-monitor/history.ts';

const numbers = numberFormats({ temperature: 'C', heat: 'kWh' }, 'en');

describe('what a replay found', () => {
  const counts = { same: false, steps: 1000, differences: 0, leftOut: 0 };
  test.each([
    [{ same: true }, 'The same decisions, all 1,000 of them.'],
    [{ leftOut: 7 }, 'No difference in 1,000 steps; 7 more could not be replayed.'],
    [{ differences: 1, leftOut: 7 }, 'Different decisions: 1 of 1,000 steps.'],
  ])('with %j is told', (change, words) => {
    expect(verdictText({ ...counts, ...change }, numbers)).toBe(words);
  });
  test('is made up so that the host could send it', () => {
    for (const same of [true, false])
      expect(replayReportSchema.safeParse(testReplay('2031-06-20', same)).error).toBeUndefined();
  });
});

test('a reason has its title, and one of another version its code', () => {
  expect(reasonTitle('resting-no-gain')).not.toBe('resting-no-gain');
  expect(['of-another-version', 'constructor'].map(reasonTitle)).toEqual([
    'of-another-version',
    'constructor',
  ]);
});

test('how far a job is stands with a number where there is one', () => {
  const words = jobStages.map((doing) => progressText({ doing, doneFraction: 0.43 }, numbers));
  expect(words.filter((text) => text.endsWith('43 % done.'))).toHaveLength(5);
  expect(words.filter((text) => text.endsWith(' …'))).toHaveLength(4);
  expect(doneOf({ doing: 'fitting', doneFraction: 0.43 })).toBeUndefined();
  expect(doneOf({ doing: 'sweeping', doneFraction: 0.43 })).toBe(0.43);
});

describe('the words of a fit', () => {
  test('name traits and channels by their titles', () => {
    expect(inTitles('windOpticalSM is held at 0.025 s/m; panSheetC: small.')).toBe(
      'Optical loss by wind is held at 0.025 s/m; Sheet: small.',
    );
    expect(inTitles('No day without W/mK or toString was of use.')).toBe(
      'No day without W/mK or toString was of use.',
    );
    expect(titleOf('constructor')).toBe('constructor');
  });
  test('write squares and cubes', () => {
    expect(['W/m2K', 'J/m3K', '1'].map(unitText)).toEqual(['W/m²K', 'J/m³K', '1']);
  });
});
