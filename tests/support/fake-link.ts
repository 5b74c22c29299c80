import type { LoopLink } from '../../controller/links/link.ts';
import type { Feedback } from '../../shared-types/engine.ts';
import type { OutputMessage } from '../../shared-types/messages.ts';
import type { RawReadings } from '../../shared-types/readings.ts';

export interface FakeLink extends LoopLink {
  /** All that was put out, in order. */
  readonly applied: OutputMessage[];
  /** What it says from now on. */
  hear(readings: RawReadings, feedback?: Feedback | null): void;
  /** Whether it is up from now on, and whether outputs leave over it. */
  connect(connected: boolean, takesOutputs?: boolean): void;
}

/** A link whose device is the test. */
export function fakeLink(): FakeLink {
  const applied: OutputMessage[] = [];
  let said: RawReadings = {};
  let done: Feedback | null = null;
  let taken = 0;
  let connected = true;
  let takes = true;
  return {
    applied,
    hear(readings, feedback = null) {
      said = readings;
      done = feedback;
      taken++;
    },
    connect(isUp, takesOutputs = isUp) {
      connected = isUp;
      takes = takesOutputs;
    },
    open: async () => undefined,
    readings: () => said,
    feedback: () => done,
    apply(message) {
      applied.push(message);
      return takes;
    },
    health: () => ({ kind: 'mqtt', connected, taken, ignored: 0, lastIgnored: null, losses: 0 }),
    close: async () => undefined,
  };
}
