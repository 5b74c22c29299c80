import type { Decision } from '../../../shared-types/engine.ts';
import type { DayCurves } from '../../../shared-types/log.ts';
import type { Extremes } from '../../simulate/extremes.ts';

/** What a simulated loop made of a day. */
export interface Lived {
  /** Heat that came home, less what was taken, and what the water outside the store holds more than at first [J]. */
  readonly heatHomeJ: number;
  readonly electricityJ: number;
  readonly pumpRunS: number;
  readonly starts: number;
  readonly fills: number;
  readonly extremes: Readonly<Extremes>;
  /** What the sensors showed and the engine decided, minute by minute. */
  readonly curves: DayCurves;
}

type PhaseSpan = DayCurves['phases'][number];

/** Phases one after another, each with its reason. */
export interface PhaseTrack {
  note(atMs: number, decision: Decision): void;
  spans(): PhaseSpan[];
}

export function createPhaseTrack(): PhaseTrack {
  const spans: PhaseSpan[] = [];
  return {
    note(atMs, { phase, reasons }) {
      const open = spans.at(-1);
      if (open !== undefined) open.toMs = atMs;
      if (open?.phase === phase && open.reason === reasons.phase.code) return;
      spans.push({ phase, reason: reasons.phase.code, fromMs: atMs, toMs: atMs });
    },
    spans: () => spans,
  };
}
