import { expect, it } from 'vitest';
import type { LoopFit } from '../../../shared-types/tuning.ts';
import { fitText } from '../../../sim/identify/fit-text.ts';

const fit: LoopFit = {
  schemaVersion: 1,
  site: 'quillhaven',
  days: ['2031-06-21'],
  converged: true,
  parameters: [
    { name: 'stillLossWM2K', unit: 'W/m2K', value: 11.4567, standardError: 0.4321, heldBecause: null },
    { name: 'opticalEfficiency', unit: '1', value: 0.905, standardError: null, heldBecause: 'of this' },
  ],
  sensorErrors: [],
  covariance: [[0.19]],
  residuals: [{ channel: 'panSheetC', samples: 120, rms: 0.0314, mean: -0.0012, lagOneCorrelation: 0.456 }],
  verdicts: ['One thing.', 'Another.'],
};

it('a fit is told in columns: what was found, what is held, what is left over, what the days tell', () => {
  expect(fitText(fit).split('\n')).toEqual([
    'quillhaven, 2031-06-21',
    '',
    '  Parameter                value     error',
    '  stillLossWM2K            11.46      0.43 W/m2K',
    '  opticalEfficiency       0.9050      held 1',
    '',
    '  Left over                  rms      mean   lag one   times',
    '  panSheetC                0.031    -0.001      0.46     120',
    '',
    'What the days tell:',
    '  - One thing.',
    '  - Another.',
  ]);
});

it('what sensors show too much stands below: a share as a percentage', () => {
  const lines = fitText({
    ...fit,
    sensorErrors: [
      { channel: 'ambientC', kind: 'offset', value: -0.25, standardError: 0.1234 },
      { channel: 'irradianceWM2', kind: 'share', value: 0.0312, standardError: 0.0123 },
    ],
  }).split('\n');
  expect(lines.slice(6, 9)).toEqual([
    '  Shown too much           value     error',
    '  ambientC                 -0.25      0.12',
    '  irradianceWM2             3.12       1.2 %',
  ]);
});

it('a fit that found nothing says why, and of several days the first and the last', () => {
  const text = fitText({ ...fit, converged: false, days: ['2031-06-21', '2031-06-23', '2031-06-24'] });
  expect(text).toBe('quillhaven, 3 days, 2031-06-21 to 2031-06-24: no fit.\n  - One thing.\n  - Another.');
});
