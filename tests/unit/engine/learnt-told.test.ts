import { expect, test } from 'vitest';
import { step } from '../../../controller/engine/index.ts';
import { Loop, makeSite } from './rig.ts';

const learnt = { fullFlowLMin: 18.5, outletOffsetK: 0.3, outletOffsetSdK: 0.2 };

function loopThatLearnt(): Loop {
  const loop = new Loop(makeSite('drain-valve'));
  loop.state = { ...loop.state, learnt };
  return loop;
}

test('a decision tells what was learnt about the loop', () => {
  expect(loopThatLearnt().step().last.learnt).toEqual(learnt);
  expect(new Loop(makeSite('drain-valve')).step().last.learnt).toEqual({});
});

test('a decision of a failed step tells it as well', () => {
  const { state, site, settings, nowMs } = loopThatLearnt();
  const broken = new Proxy(site, {
    get() {
      throw new Error('a site that cannot be read');
    },
  });
  const input = {
    nowMs,
    elapsedMs: null,
    localDay: '2031-06-21',
    readings: {},
    feedback: null,
    request: null,
  };
  const { decision } = step(state, input, broken, settings);
  expect(decision.reasons.phase.code).toBe('internal-error');
  expect(decision.learnt).toEqual(learnt);
});
