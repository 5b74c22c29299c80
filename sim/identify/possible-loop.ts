import type { Channel } from '../../shared-types/channels.ts';
import type { Traits } from '../plant/traits.ts';
import { passingShare } from './world/passing-cloud.ts';

/** What a sensor shows of a true value: (1 + share) times the value, and an offset more, in the channel's unit. */
export interface OwnError {
  readonly share: number;
  readonly offset: number;
}

/** A sky that is told by formula: how much of a passing cloud's long-wave light is there, and what more comes down by day [W/m2]. */
export interface OwnSky {
  readonly cloudShare: number;
  readonly moreWM2: number;
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

export const usualSky: OwnSky = { cloudShare: passingShare.mean, moreWM2: 0 };

/** A loop of which nothing is known. */
export const usualLoop: PossibleLoop = { traits: {}, sensorErrors: {}, sky: usualSky };
