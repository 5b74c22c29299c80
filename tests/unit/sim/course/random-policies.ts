import type { Site } from '../../../../shared-types/site.ts';
import { emptying, type Policy, pumping, resting } from '../../../../sim/course/policy.ts';
import { thermostat } from '../../../../sim/course/thermostat.ts';
import { hashFraction } from '../../../../sim/weather/random.ts';

const stream = 900;
const hourMs = 3_600_000;

/** Draws from a number: 0 to 1, always the same for the same number and order. */
function drawsOf(number: number): () => number {
  let index = 0;
  return () => hashFraction(number, stream, index++);
}

/** Does one thing and then another for as long as chance has it: two minutes to two hours, all day and night. */
export function restlessPolicy(number: number): Policy {
  const draw = drawsOf(number);
  const meanMin = 4 + 60 * draw();
  const all = [emptying, pumping, resting, { ...pumping, exchangerPumpOn: false }];
  let outputs = emptying;
  let untilMs = Number.NEGATIVE_INFINITY;
  return ({ nowMs }) => {
    if (nowMs < untilMs) return outputs;
    outputs = all[Math.floor(draw() * all.length)] ?? emptying;
    untilMs = nowMs + 60_000 * Math.max(2, -meanMin * Math.log(1 - draw()));
    return outputs;
  };
}

/** Empty by night; by day full from a random hour to another, pump and rest as chance has it. */
export function dayPolicy(number: number, fromMs: number): Policy {
  const draw = drawsOf(number);
  const fillMs = fromMs + (2 + 5 * draw()) * hourMs;
  const emptyMs = fromMs + (9 + 6 * draw()) * hourMs;
  const restShare = 0.6 * draw() ** 2;
  let outputs = pumping;
  let untilMs = fillMs + 0.5 * hourMs;
  return ({ nowMs }) => {
    if (nowMs < fillMs || nowMs >= emptyMs) return emptying;
    if (nowMs < untilMs) return outputs;
    outputs = draw() < restShare ? resting : pumping;
    untilMs = nowMs + (2 + 20 * draw()) * 60_000;
    return outputs;
  };
}

/** A thermostat with thresholds out of a hat. */
export function someThermostat(number: number, site: Site): Policy {
  const draw = drawsOf(number);
  const onK = 1 + 9 * draw();
  return thermostat(site, {
    onK,
    offK: onK * draw(),
    fillK: 1 + 12 * draw(),
    empties: draw() < 0.7,
    settleS: 2400 * draw(),
  });
}
