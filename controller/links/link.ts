import type { Feedback } from '../../shared-types/engine.ts';
import type { LinkHealth, OutputMessage } from '../../shared-types/messages.ts';
import type { RawReadings } from '../../shared-types/readings.ts';

/**
 * How readings come in and outputs go out, whatever lies between controller and device.
 *
 * A link never throws after `open`; what it cannot understand it counts and ignores. It reconnects
 * by itself. Ages are counted on the steady clock that it was given.
 */
export interface LoopLink {
  /** Resolves once the link listens; it need not have reached its device yet. */
  open(): Promise<void>;
  /** The newest raw reading of every channel that was ever heard, with its age now. */
  readings(): RawReadings;
  /** The newest word of the device about its outputs, or null when there was none. */
  feedback(): Feedback | null;
  /** Sends outputs at once; when they cannot go out they are dropped, never queued. @returns whether they left. */
  apply(message: OutputMessage): boolean;
  health(): LinkHealth;
  close(): Promise<void>;
}

/** What a link reports beside its readings: once a cause, not once a message. */
export interface LinkReport {
  readonly kind: 'link-lost' | 'link-back' | 'message-ignored';
  readonly text: string;
}
