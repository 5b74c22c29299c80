import type { Channel } from '../../shared-types/channels.ts';
import type { Traits } from '../plant/traits.ts';

/** What a sensor shows of a true value: (1 + share) times the value, and an offset more, in the channel's unit. */
export interface OwnError {
  readonly share: number;
  readonly offset: number;
}

/** A loop as it may be: its traits, and what its sensors show wrong. What is left out is as usual, and right. */
export interface PossibleLoop {
  readonly traits: Partial<Traits>;
  readonly sensorErrors: Readonly<Partial<Record<Channel, OwnError>>>;
}

export const noError: OwnError = { share: 0, offset: 0 };

/** A loop of which nothing is known. */
export const usualLoop: PossibleLoop = { traits: {}, sensorErrors: {} };
