import { describe, expect, it } from 'vitest';
import type { Channel } from '../../../../shared-types/channels.ts';
import type { CommissioningCheck } from '../../../../shared-types/commissioning.ts';
import { allSensors, emptyLoop, Loop, makeSite } from '../rig.ts';

const level = makeSite('drain-valve', allSensors);
const bare = makeSite('drain-valve', ['panOutletC', 'panSheetC', 'storeBottomC']);

const step = (loop: Loop) => loop.last.commissioning?.step;
const finding = (loop: Loop, check: CommissioningCheck) =>
  loop.last.commissioning?.findings.find((one) => one.check === check);

function untilStep(loop: Loop, name: string, mostS = 4000): Loop {
  for (let atS = 0; atS <= mostS; atS += 5) if (step(loop.step()) === name) return loop;
  throw new Error(`no ${name}, but ${step(loop)} (${loop.why})`);
}

/** A run on an empty loop that fills now. */
function filling(loop: Loop): Loop {
  expect(loop.ask({ kind: 'commission' })).toMatchObject({ accepted: true });
  untilStep(loop, 'filling').until('filling');
  return loop.set({ flowLMin: 20 });
}

/** The same, and the pan was seen full after 150 s. */
function flowing(loop: Loop): Loop {
  filling(loop).run(140).set({ panLevelMm: 40 });
  return untilStep(loop, 'flowing');
}

describe('a commissioning run with a level sensor', () => {
  it('empties first, then takes the times of filling and emptying, and gives the loop back', () => {
    const loop = new Loop(level).set({ panLevelMm: 20, flowLMin: 0 }).run(10);
    loop.ask({ kind: 'commission' });
    expect([step(loop), loop.why]).toEqual(['emptying', 'commissioning-emptying']);
    loop.set({ panLevelMm: 0 }).until('empty');
    expect(step(loop)).toBe('filling');
    loop.until('filling');
    expect(loop.why).toBe('commissioning-filling');
    loop.set({ flowLMin: 20 }).run(140).set({ panLevelMm: 40 });
    untilStep(loop, 'flowing');
    // The median of three lags by a sample.
    expect(loop.state.learnt['fillTimeS']).toBe(150);
    expect(finding(loop, 'fill-time')).toMatchObject({ result: 'passed', text: 'The pan fills in 3 min.' });
    loop.run(10);
    expect(loop.why).toBe('commissioning-flowing');
    untilStep(loop, 'draining').set({ flowLMin: 0 }).until('emptying');
    expect(loop.why).toBe('commissioning-draining');
    loop.run(40).set({ panLevelMm: 3 }).run(20);
    expect([loop.phase, step(loop)]).toEqual(['empty', 'draining']);
    loop.set({ panLevelMm: 2 });
    untilStep(loop, 'done');
    // 40 s full, 20 s with a last film, and the sample that the median lags.
    expect(loop.state.learnt['drainTimeS']).toBe(70);
    expect(finding(loop, 'drain-time')?.text).toBe('The pan empties in 70 s.');
    expect(loop.last.lease).toBeNull();
    expect(loop.run(30).why).not.toContain('commissioning');
    expect(step(loop)).toBe('done');
  });

  it('lets water go round for two changes of the pan before it judges', () => {
    const loop = flowing(emptyLoop(level).set({ panLevelMm: 0 })).run(2395);
    expect(step(loop)).toBe('flowing');
    expect(step(loop.run(10))).toBe('draining');
  });

  it('says that a pan does not empty', () => {
    const loop = flowing(emptyLoop(level).set({ panLevelMm: 0 }));
    untilStep(loop, 'draining').set({ flowLMin: 0, panLevelMm: 12 });
    untilStep(loop, 'done');
    expect(finding(loop, 'drain-time')).toMatchObject({
      result: 'failed',
      text: 'The pan did not empty: 12 mm are left.',
    });
    expect(loop.state.learnt['drainTimeS']).toBeUndefined();
  });

  it('has measured times stand in for the settings', () => {
    const loop = flowing(emptyLoop(level).set({ panLevelMm: 0 }));
    expect(loop.state.learnt['fillTimeS']).toBe(155);
    loop.state = { ...loop.state, commission: null, operator: { ...loop.state.operator, lease: null } };
    loop.set({ panLevelMm: 0, flowLMin: 0, panOutletC: 20, panSheetC: 20 }).until('empty').run(60);
    loop.set({ panOutletC: 45, panSheetC: 45 }).until('filling').run(10);
    expect(loop.last.reasons.phase.values).toMatchObject({ fillTimeS: 200 / 1.2 });
  });
});

describe('a commissioning run without a level sensor', () => {
  it('waits for a person who sees the pan full, and empty', () => {
    const loop = filling(emptyLoop(bare));
    expect(loop.run(120).phase).toBe('circulating');
    expect(step(loop)).toBe('filling');
    expect(loop.ask({ kind: 'confirm' })).toMatchObject({ accepted: true });
    expect(step(loop)).toBe('flowing');
    expect(loop.state.learnt['fillTimeS']).toBe(126);
    expect(loop.ask({ kind: 'confirm' })).toMatchObject({ code: 'nothing-to-do' });
    untilStep(loop, 'draining').until('emptying').run(50);
    expect(loop.ask({ kind: 'confirm' })).toMatchObject({ accepted: true });
    expect([step(loop), loop.state.learnt['drainTimeS']]).toEqual(['done', 51]);
  });

  it('keeps the times as set when nobody sees it', () => {
    const loop = filling(emptyLoop(bare)).run(190);
    expect(step(loop)).toBe('filling');
    untilStep(loop, 'flowing', 10);
    expect(finding(loop, 'fill-time')?.result).toBe('by-hand');
    untilStep(loop, 'draining').until('empty').run(50);
    expect(step(loop)).toBe('draining');
    untilStep(loop, 'done', 30);
    expect(finding(loop, 'drain-time')?.result).toBe('by-hand');
    expect(loop.state.learnt).toEqual({});
  });

  it('takes the pan for full when the pump has moved its volume', () => {
    const site = makeSite('drain-valve', ['panOutletC', 'panSheetC', 'storeBottomC', 'flowLMin']);
    const loop = filling(emptyLoop(site, { fillTimeS: 900, fillTimeoutS: 1200 }).set({ flowLMin: 0 }));
    loop.set({ flowLMin: 40 });
    untilStep(loop, 'flowing');
    // 400 L at 40 L/min, after the first step at 20.
    expect(loop.state.learnt['fillTimeS']).toBeGreaterThanOrEqual(600);
    expect(loop.state.learnt['fillTimeS']).toBeLessThanOrEqual(610);
  });

  it('does not believe that of a pan with a free outlet', () => {
    const site = makeSite('pump-stop', ['panOutletC', 'panSheetC', 'storeBottomC', 'flowLMin']);
    const loop = filling(emptyLoop(site, { fillTimeS: 900, fillTimeoutS: 1200 }).set({ flowLMin: 0 }));
    untilStep(loop.set({ flowLMin: 40 }), 'flowing');
    expect(loop.state.learnt).toEqual({});
  });
});

describe('what a commissioning run judges', () => {
  const judged = (loop: Loop) => untilStep(flowing(loop.set({ panLevelMm: 0 })), 'draining');

  it.each([
    [20, 'passed'],
    [10, 'passed'],
    [9.9, 'failed'],
  ] as const)('a flow of %d L/min', (flowLMin, result) => {
    const loop = flowing(emptyLoop(level).set({ panLevelMm: 0 })).set({ flowLMin });
    expect(finding(untilStep(loop, 'draining'), 'pump-direction')?.result).toBe(result);
  });

  it.each([
    [22, 'passed'],
    [22.1, 'failed'],
    [17.9, 'failed'],
  ] as const)('an inlet at %d °C over a store at 20 °C, where no flow is measured', (panInletC, result) => {
    const sensors: readonly Channel[] = [
      'panOutletC',
      'panSheetC',
      'panInletC',
      'storeBottomC',
      'panLevelMm',
    ];
    const loop = judged(emptyLoop(makeSite('drain-valve', sensors)).set({ panInletC }));
    expect(finding(loop, 'pump-direction')?.result).toBe(result);
    expect(finding(loop, 'sensors-agree')?.result).toBe(result);
  });

  it('nothing, where nothing shows it', () => {
    const sensors: readonly Channel[] = ['panOutletC', 'panSheetC', 'storeBottomC', 'panLevelMm'];
    const loop = judged(emptyLoop(makeSite('drain-valve', sensors)));
    expect(finding(loop, 'pump-direction')?.result).toBe('by-hand');
    expect(finding(loop, 'sensors-agree')?.result).toBe('by-hand');
  });

  it('the device by what it says of its pump', () => {
    const obedient = emptyLoop(level).set({ panLevelMm: 0 });
    const told = (loop: Loop, lies = false) => {
      const next = loop.step.bind(loop);
      loop.step = (elapsedS, request) => {
        const commanded = loop.state.outputs.pumpFraction;
        loop.feedback = { pumpFraction: lies ? 0 : commanded, drainOpen: null, ageMs: 0 };
        return next(elapsedS, request);
      };
      untilStep(judged(loop).set({ panLevelMm: 0, flowLMin: 0 }), 'done');
      return finding(loop, 'outputs-follow')?.result;
    };
    expect(told(obedient.run(60))).toBe('passed');
    expect(told(emptyLoop(level).set({ panLevelMm: 0 }).run(60), true)).toBe('failed');
    const silent = judged(emptyLoop(level)).set({ panLevelMm: 0, flowLMin: 0 });
    expect(finding(untilStep(silent, 'done'), 'outputs-follow')?.result).toBe('by-hand');
    expect(finding(silent, 'outputs-drop')).toMatchObject({ result: 'by-hand' });
    expect(finding(silent, 'outputs-drop')?.text).toContain('60 s');
  });
});

describe('a commissioning run ends', () => {
  it('at once with a protection, and does not begin under one', () => {
    const loop = flowing(emptyLoop(level).set({ panLevelMm: 0 }))
      .set({ panOutletC: 3, panSheetC: 3 })
      .run(15);
    expect([step(loop), loop.last.lease, loop.why]).toEqual(['ended', null, 'frost-measured']);
    expect(loop.ask({ kind: 'commission' })).toMatchObject({ code: 'hazard-forbids' });
  });

  it.each(['automatic', 'empty'] as const)('when a person asks for %s', (kind) => {
    const loop = flowing(emptyLoop(level).set({ panLevelMm: 0 }));
    expect(loop.ask({ kind })).toMatchObject({ accepted: true });
    expect(step(loop)).toBe('ended');
  });

  it('with its time', () => {
    const loop = new Loop(level).set({ panLevelMm: 20, flowLMin: 0 }).run(10);
    const answer = loop.ask({ kind: 'commission' });
    // Four drain times, the fill timeout, two changes of the pan, an hour.
    expect(answer?.leaseMs).toBe(1000 * (4 * 60 + 200 + 2400 + 3600));
    loop.run(6430);
    expect(step(loop)).toBe('emptying');
    expect(step(loop.run(15))).toBe('ended');
  });

  it('with a restart, and a new one begins anew', () => {
    const loop = flowing(emptyLoop(level).set({ panLevelMm: 0 }))
      .set({ flowLMin: 0, panLevelMm: 0 })
      .step(null);
    expect(step(loop)).toBe('ended');
    loop.until('empty').ask({ kind: 'commission' });
    expect(loop.last.commissioning).toMatchObject({ findings: [] });
    expect(step(loop)).toBe('filling');
  });
});

describe('a pan that cannot be emptied', () => {
  it('is taken as it is: pump and sensors alone are judged', () => {
    const loop = emptyLoop(makeSite('corner', [...allSensors]))
      .set({ panLevelMm: 40, flowLMin: 0 })
      .run(20);
    loop.ask({ kind: 'commission' });
    loop.until('circulating').set({ flowLMin: 20 });
    expect(step(loop)).toBe('flowing');
    untilStep(loop, 'done');
    expect(loop.state.learnt).toEqual({});
    expect(finding(loop, 'fill-time')?.result).toBe('by-hand');
    expect(finding(loop, 'drain-time')).toBeUndefined();
  });
});

describe('a confirmation', () => {
  it('is nothing without a run', () => {
    expect(emptyLoop(bare).ask({ kind: 'confirm' })).toMatchObject({ code: 'nothing-to-do' });
  });

  it('is nothing while the run waits for nobody', () => {
    const loop = new Loop(level).set({ panLevelMm: 20, flowLMin: 0 }).run(10);
    loop.ask({ kind: 'commission' });
    expect(loop.ask({ kind: 'confirm' })).toMatchObject({ code: 'nothing-to-do' });
  });
});
