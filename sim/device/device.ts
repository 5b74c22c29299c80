import type { Clock } from '../../controller/clock.ts';
import type { Outputs } from '../../shared-types/engine.ts';
import { advance } from '../plant/advance.ts';
import { partFault } from '../plant/faults.ts';
import { actuatorsOf } from '../plant/impairments.ts';
import { readSensors, type SensorValues } from '../plant/sensors.ts';
import type { PlantState } from '../plant/state.ts';
import type { Weather } from '../weather/weather.ts';
import type { FaultBoard } from './fault-board.ts';
import { createOutputsLease, type HeardOutputs } from './outputs-lease.ts';

export interface DeviceFeedback extends Outputs {
  /** True while the outputs stand safe because nobody renewed them. */
  readonly expired: boolean;
}

export interface DeviceOptions {
  readonly plant: PlantState;
  /** Instant at which the plant stands as given [UTC ms]. */
  readonly plantAtMs: number;
  readonly weather: Weather;
  readonly clock: Clock;
  /** Steady time of the wall [ms]. */
  readonly wallMs: () => number;
  readonly seed: number;
  /** Sensors without their error for life. */
  readonly exactSensors?: boolean;
  readonly faults: FaultBoard;
}

/** A microcontroller with the simulated loop wired to it. It knows no broker and no port. */
export interface Device {
  /** Without power it hears nothing. */
  hear(outputs: HeardOutputs): void;
  /** False during a power cut: nothing is sent then. */
  powered(): boolean;
  /** Carries the loop up to the clock's now. @returns simulated time that was left out [ms], usually 0. */
  catchUp(): number;
  read(): SensorValues;
  feedback(): DeviceFeedback;
  /** The loop, and the instant at which it stands so. */
  standing(): { readonly plant: PlantState; readonly atMs: number };
}

const usualStepMs = 5000;
const longestStepMs = 60_000;
/** After a long pause no more steps than this are made at once; they grow longer instead. */
const mostSteps = 2000;

export function createDevice(options: DeviceOptions): Device {
  const { plant, weather, clock, wallMs, seed, faults, exactSensors = false } = options;
  const lease = createOutputsLease();
  let atMs = options.plantAtMs;
  const poweredAt = (ms: number) => partFault(faults.activeAt(ms), 'power-cut') === undefined;
  const powered = () => poweredAt(Math.max(atMs, clock.nowMs()));

  function catchUp(): number {
    const nowMs = clock.nowMs();
    const steadyMs = clock.steadyMs();
    let leftOutMs = 0;
    // Clocks of machines are put right by seconds; a step further back than an hour is a new beginning.
    if (nowMs < atMs - 3_600_000) atMs = nowMs;
    if (nowMs - atMs > mostSteps * longestStepMs) {
      leftOutMs = nowMs - atMs - mostSteps * longestStepMs;
      atMs += leftOutMs;
    }
    const stepMs = Math.max(usualStepMs, (nowMs - atMs) / mostSteps);
    while (atMs < nowMs) {
      const untilMs = Math.min(nowMs, atMs + stepMs);
      const outputs = lease.inForce(steadyMs - (nowMs - atMs), wallMs());
      // Faults as they are at the step's end: one that comes within a step is met in that step, and new but once.
      advance(plant, outputs, weather.at(untilMs), (untilMs - atMs) / 1000, faults.activeAt(untilMs));
      atMs = untilMs;
      // What was told before the cut is forgotten after it.
      if (!poweredAt(atMs)) lease.drop();
    }
    return leftOutMs;
  }

  return {
    hear: (outputs) => {
      if (powered()) lease.renew(outputs, clock.steadyMs(), wallMs());
    },
    powered,
    catchUp,
    read: () => readSensors(plant, seed, faults.activeAt(atMs), exactSensors),
    feedback: () => {
      const steadyMs = clock.steadyMs();
      const outputs = lease.inForce(steadyMs, wallMs());
      return { ...actuatorsOf(outputs, faults.activeAt(atMs)), expired: lease.expired(steadyMs, wallMs()) };
    },
    standing: () => ({ plant, atMs }),
  };
}
