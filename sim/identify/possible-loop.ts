import type { Channel } from '../../shared-types/channels.ts';
import type { Traits } from '../plant/traits.ts';
import { minuteMs } from './world/minutes.ts';
import { passingShare } from './world/passing-cloud.ts';

/** What a sensor shows of a true value: (1 + share) times the value, and an offset more, in the channel's unit. */
export interface OwnError {
  readonly share: number;
  readonly offset: number;
}

/** A sky over a loop: what the true one has more than formula and assumptions. */
export interface OwnSky {
  /** How much of a passing cloud's long-wave light is there. */
  readonly cloudShare: number;
  /**
   * What more comes down [W/m2], 1 value or more: at instants that lie `skyStepMin` apart from `fromMs` on, in between by
   * straight lines, beyond the ends as there.
   */
  readonly moreWM2: readonly number[];
  readonly fromMs: number;
  /**
   * By how much air that nobody measured is warmer under a high sun than it is taken for [K], for by night the dry sheet
   * tells it; and what a wind that nobody measured blows more, as a share.
   */
  readonly airK: number;
  readonly windShare: number;
}

/** A sky that errs errs for some hours; a design choice. */
export const skyStepMin = 180;

/** What more comes down at an instant [W/m2]. */
export function moreSkyWM2({ moreWM2, fromMs }: Pick<OwnSky, 'moreWM2' | 'fromMs'>, atMs: number): number {
  const last = moreWM2.length - 1;
  const place = Math.min(last, Math.max(0, (atMs - fromMs) / (skyStepMin * minuteMs)));
  const before = Math.min(Math.floor(place), last - 1);
  if (before < 0) return moreWM2[0] as number;
  const [from, to] = [moreWM2[before] as number, moreWM2[before + 1] as number];
  return from + (place - before) * (to - from);
}

/**
 * A loop as it may be: its traits, what its sensors show wrong, and the sky over it. What is left out is as usual, and
 * right.
 */
export interface PossibleLoop {
  readonly traits: Partial<Traits>;
  readonly sensorErrors: Readonly<Partial<Record<Channel, OwnError>>>;
  readonly sky: OwnSky;
}

export const noError: OwnError = { share: 0, offset: 0 };

export const usualSky: OwnSky = {
  cloudShare: passingShare.mean,
  moreWM2: [0],
  fromMs: 0,
  airK: 0,
  windShare: 0,
};

/** A loop of which nothing is known. */
export const usualLoop: PossibleLoop = { traits: {}, sensorErrors: {}, sky: usualSky };
