import { describe, expect, it } from 'vitest';
import {
  type CommissionMemory,
  isCommission,
  isUnderWay,
} from '../../../../controller/engine/commission/memory.ts';
import { disturb } from '../rig.ts';

const whole: CommissionMemory = {
  step: 'flowing',
  sinceMs: 5,
  untilMs: 9,
  fillS: 150,
  followed: { on: true, off: false, differed: false },
  findings: [
    { check: 'fill-time', result: 'passed', values: { seconds: 150 } },
    { check: 'outputs-drop', result: 'by-hand', values: {} },
  ],
};

const changed = (path: string, value: unknown) => isCommission(disturb(whole, path.split('.'), value));

describe('the memory of a commissioning run', () => {
  it('is null or a whole one', () => {
    expect([isCommission(null), isCommission(whole)]).toEqual([true, true]);
    expect(isCommission({ ...whole, fillS: null, findings: [] })).toBe(true);
    for (const stranger of [undefined, 7, 'flowing', []]) expect(isCommission(stranger)).toBe(false);
  });

  it.each(['emptying', 'filling', 'flowing', 'draining', 'done', 'ended'])('knows the step %s', (step) => {
    expect(isCommission({ ...whole, step })).toBe(true);
    expect(isUnderWay({ ...whole, step } as CommissionMemory)).toBe(step !== 'done' && step !== 'ended');
  });

  it.each(['fill-time', 'pump-direction', 'sensors-agree', 'drain-time', 'outputs-follow', 'outputs-drop'])(
    'knows the check %s',
    (check) => {
      for (const result of ['passed', 'failed', 'by-hand'])
        expect(isCommission({ ...whole, findings: [{ check, result, values: {} }] })).toBe(true);
    },
  );

  it.each([
    ['step', 'boiling'],
    ['sinceMs', '5'],
    ['untilMs', Number.NaN],
    ['fillS', 'long'],
    ['followed', null],
    ['followed.on', 1],
    ['followed.off', 'no'],
    ['followed.differed', null],
    ['findings', null],
    ['findings.1', null],
    ['findings.1.check', 'taste'],
    ['findings.1.result', 'perhaps'],
    ['findings.1.values', { seconds: 'long' }],
  ])('is none with a stranger at %s: %o', (path, value) => {
    expect(changed(path, value)).toBe(false);
  });

  it('of no run is not under way', () => {
    expect(isUnderWay(null)).toBe(false);
  });
});
