import { describe, expect, it } from 'vitest';
import type { CommissionMemory, Finding } from '../../../../controller/engine/commission/memory.ts';
import { tellCommission } from '../../../../controller/engine/commission/tell.ts';

const memory: CommissionMemory = {
  step: 'done',
  sinceMs: 0,
  untilMs: 0,
  fillS: null,
  followed: { on: false, off: false, differed: false },
  findings: [],
};

const told = (check: string, result: string, values: object) =>
  tellCommission({ ...memory, findings: [{ check, result, values } as Finding] })?.findings;

const byHandDrop =
  'Pull the wire or end the controller while the pump runs: pump and drain have to fall safe within 60 s. The controller cannot see that by itself.';

describe('what a commissioning run tells', () => {
  it.each([
    ['fill-time', 'passed', { seconds: 60 }, 'The pan fills in 60 s.'],
    ['fill-time', 'failed', {}, 'The pan was not seen to fill.'],
    ['fill-time', 'by-hand', {}, 'The fill time stays as set: nothing showed when the pan was full.'],
    ['pump-direction', 'passed', { flowLMin: 20 }, 'The pump pushes the right way: 20.0 L/min.'],
    [
      'pump-direction',
      'passed',
      { apartK: -1 },
      'The pump pushes the right way: water of the source is at the inlet, -1.0 K off.',
    ],
    [
      'pump-direction',
      'failed',
      { flowLMin: 2 },
      'The flow is 2.0 L/min: look for a pump that turns or stands the wrong way.',
    ],
    [
      'pump-direction',
      'failed',
      { apartK: 5 },
      'The inlet is 5.0 K off its source: water does not come in there.',
    ],
    [
      'pump-direction',
      'by-hand',
      {},
      'Feel which pipe becomes warm: no sensor shows which way the pump pushes.',
    ],
    [
      'sensors-agree',
      'passed',
      { offsetK: 0.5 },
      'In the dark outlet and store bottom agree to 0.5 K, which is taken off from now on.',
    ],
    [
      'sensors-agree',
      'passed',
      { apartK: 0.5 },
      'Inlet and source agree to 0.5 K; run again in the dark to compare the outlet.',
    ],
    ['sensors-agree', 'failed', { offsetK: 3 }, 'In the dark outlet and store bottom are 3.0 K apart.'],
    ['sensors-agree', 'failed', { apartK: 3 }, 'Inlet and source are 3.0 K apart in the same water.'],
    [
      'sensors-agree',
      'by-hand',
      {},
      'Hold the sensors into one bucket of water: no two of them lie in the same water here.',
    ],
    ['drain-time', 'passed', { seconds: 60 }, 'The pan empties in 60 s.'],
    ['drain-time', 'failed', { levelMm: 12 }, 'The pan did not empty: 12 mm are left.'],
    ['drain-time', 'by-hand', {}, 'The drain time stays as set: nothing showed when the pan was empty.'],
    ['outputs-follow', 'passed', {}, 'The device ran the pump and stood still as it was told.'],
    ['outputs-follow', 'failed', {}, 'The device did not do what it was told.'],
    ['outputs-follow', 'by-hand', {}, 'Watch the pump start and stop: the device does not say what it does.'],
    ['outputs-drop', 'passed', {}, 'The outputs fall safe when nobody renews them.'],
    ['outputs-drop', 'failed', {}, 'The outputs stay on when nobody renews them.'],
    ['outputs-drop', 'by-hand', { expiryS: 60 }, byHandDrop],
  ])('of %s %s with %o is one sentence', (check, result, values, text) => {
    expect(told(check, result, values)).toEqual([{ check, result, text }]);
  });

  it('is nothing without a run, and where the newest stands', () => {
    expect(tellCommission(null)).toBeNull();
    expect(tellCommission(memory)).toEqual({ step: 'done', text: 'The run is done.', findings: [] });
  });
});
