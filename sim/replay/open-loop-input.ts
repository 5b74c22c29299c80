import type { Channel } from '../../shared-types/channels.ts';
import type { EngineInput } from '../../shared-types/engine.ts';
import { type Driving, outputsDiffer } from './outputs-differ.ts';

/** Measuring points that answer at once to what the pump and the drain do. */
const answering: readonly Channel[] = [
  'flowLMin',
  'pumpPowerW',
  'panLevelMm',
  'storeLevelMm',
  'reservoirLevelMm',
];

/**
 * What a side that drives the loop otherwise is given of a logged step.
 *
 * While its outputs differ from those that really drove the loop, flow, levels, power and the device's
 * feedback answer to the others: they are withheld, so that the engine takes none of them for a fault.
 *
 * @param base - What really drove the loop up to this step, and `other` what this side asked for.
 */
export function openLoopInput(
  input: EngineInput,
  base: Driving | undefined,
  other: Driving | undefined,
): EngineInput {
  if (base === undefined || other === undefined || !outputsDiffer(base, other)) return input;
  const readings = { ...input.readings };
  for (const channel of answering) delete readings[channel];
  return { ...input, readings, feedback: null };
}
