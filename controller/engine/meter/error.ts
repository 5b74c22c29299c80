import { good } from '../sense/facts.ts';
import type { Situation } from '../situation.ts';
import { fullFlowLMin } from '../speed/flow-of-speed.ts';
import { endsPair } from './ends.ts';

/** Accuracy classes of the standard that are told apart here. */
export type AccuracyClass = 2 | 3;

/** Error of a flow sensor [%]: at the permanent flow, and what comes on top over the share of it. */
const flowPercent: Readonly<Record<AccuracyClass, readonly [base: number, rising: number]>> = {
  2: [2, 0.02],
  3: [3, 0.05],
};
const mostFlowPercent = 5;
/** Least temperature difference for which the meter is made [K]. */
const leastDifferenceK = 3;

/**
 * Largest error of flow sensor, sensor pair and calculator that EN 1434-1 permits a complete heat meter, as
 * shares of the heat: each of them, in this order. The standard adds them up.
 *
 * @param flowFraction - Flow over the permanent flow, above 0 to 1.
 * @param differenceK - Between supply and return, above 0 K.
 *
 * Source: EN 1434-1 (and Directive 2014/32/EU, annex VI): Ef, Et = 0.5 + 3 dTmin/dT, Ec = 0.5 + dTmin/dT [%].
 * Its formulas alone: the standard is for closed loops and dipped, matched sensors. An open loop with
 * sensors strapped to pipes does not conform to it, and nothing here may be billed by.
 */
export function permittedErrors(
  accuracyClass: AccuracyClass,
  flowFraction: number,
  differenceK: number,
): readonly [flow: number, pair: number, calculator: number] {
  const [base, rising] = flowPercent[accuracyClass];
  const flow = Math.min(mostFlowPercent, base + rising / flowFraction);
  const ratio = leastDifferenceK / differenceK;
  return [flow / 100, (0.5 + 3 * ratio) / 100, (0.5 + ratio) / 100];
}

/** Largest error permitted to a complete heat meter, as a share of the heat. */
export function meterErrorFraction(
  accuracyClass: AccuracyClass,
  flowFraction: number,
  differenceK: number,
): number {
  const [flow, pair, calculator] = permittedErrors(accuracyClass, flowFraction, differenceK);
  return flow + pair + calculator;
}

/** What a flow that follows from the pump's speed may be off by; a design choice. */
const guessedFlowFraction = 0.2;
/** What two cheap sensors may disagree by while nobody compared them [K]; a design choice. */
const uncomparedK = 1;
/** How many standard deviations of a learnt offset are allowed for. */
const coverage = 2;

interface Reading {
  readonly flowLMin: number;
  readonly differenceK: number;
  readonly estimated: boolean;
}

/**
 * What a reading may be off by, as a share of it: errors added up as the standard does for its class 3, but
 * with the sensors as they are where they are worse. Null where no heat flows.
 */
export function readingErrorFraction(
  { state: { learnt }, site, readings }: Situation,
  { flowLMin, differenceK, estimated }: Reading,
): number | null {
  const sizeK = Math.abs(differenceK);
  if (flowLMin <= 0 || sizeK === 0) return null;
  const share = Math.min(1, flowLMin / fullFlowLMin(site, learnt));
  const [flow, pair, calculator] = permittedErrors(3, share, sizeK);
  const { sdK } = endsPair(site, learnt, good(readings.panInletC) !== null);
  const pairK = sdK === null ? uncomparedK : coverage * sdK;
  return (estimated ? guessedFlowFraction : flow) + Math.max(pair, pairK / sizeK) + calculator;
}
