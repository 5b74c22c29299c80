import { sourceOf } from '../meter/ends.ts';
import { good } from '../sense/facts.ts';
import type { Situation } from '../situation.ts';
import { fullFlowLMin } from '../speed/flow-of-speed.ts';
import type { Finding, Followed } from './memory.ts';

/** A pump that pushes as it should moves this share of the full flow; a design choice. */
const goodFlowFraction = 0.5;
/** Water at the inlet differs from its source by no more than two sensors and a pipe do [K]; a design choice. */
const mostApartK = 2;

/** Whether the pump pushes the right way: by the flow, else by water of the source at the inlet. */
export function judgeDirection(situation: Situation): Finding {
  const { readings, site, state } = situation;
  const check = 'pump-direction';
  const flowLMin = good(readings.flowLMin);
  if (flowLMin !== null) {
    const passed = flowLMin >= goodFlowFraction * fullFlowLMin(site, state.learnt);
    return { check, result: passed ? 'passed' : 'failed', values: { flowLMin } };
  }
  const apartK = inletApartK(situation);
  if (apartK === null) return { check, result: 'by-hand', values: {} };
  return { check, result: Math.abs(apartK) <= mostApartK ? 'passed' : 'failed', values: { apartK } };
}

/** What the inlet shows more than its source [K]. */
function inletApartK({ readings, site }: Situation): number | null {
  const inletC = good(readings.panInletC);
  const sourceC = good(readings[sourceOf(site)]);
  return inletC === null || sourceC === null ? null : inletC - sourceC;
}

/** Whether sensors of the same water agree: inlet and source while it flows. */
export function judgeSensors(situation: Situation): Finding {
  const check = 'sensors-agree';
  const apartK = inletApartK(situation);
  if (apartK === null) return { check, result: 'by-hand', values: {} };
  return { check, result: Math.abs(apartK) <= mostApartK ? 'passed' : 'failed', values: { apartK } };
}

/** Whether the device did what it was told, as far as it says. */
export function judgeFollowed({ on, off, differed }: Followed): Finding {
  const check = 'outputs-follow';
  if (differed) return { check, result: 'failed', values: {} };
  return { check, result: on && off ? 'passed' : 'by-hand', values: {} };
}

/** An output that is not renewed falls at the device: the engine cannot stop renewing it, nor see that. */
export function judgeDrop({ site }: Situation): Finding {
  return { check: 'outputs-drop', result: 'by-hand', values: { expiryS: site.control.outputExpiryS } };
}
