import type { HeatReading } from '../meter/heat-rate.ts';
import { powerW } from '../meter/totals.ts';
import type { Situation } from '../situation.ts';
import { unsureW } from './net-gain.ts';

/** Electricity counts this many times as much as heat; a design choice. */
export const electricityWorth = 3;

/**
 * True while the heat that a full pan is measured to bring home is worth less than the pump's electricity, whatever
 * its sensors may be wrong by.
 */
export function isNotWorthPumping(situation: Situation, { rateW, estimated }: HeatReading): boolean {
  if (rateW === null || estimated || situation.state.water.level !== 'full') return false;
  return rateW + unsureW(situation) < electricityWorth * powerW(situation);
}
