import type { SensorValues } from '../plant/sensors.ts';
import type { DeviceFeedback } from './device.ts';
import type { FaultWish } from './fault-text.ts';
import type { HeardOutputs } from './outputs-lease.ts';

/** What a port passes on to the device. */
export interface PortEvents {
  outputs(heard: HeardOutputs): void;
  fault(wish: FaultWish, active: boolean): void;
  /** False during a power cut: a port then says nothing, whatever it hears. */
  powered(): boolean;
  /** Something for the person at the console; each cause once. */
  say(text: string): void;
}

/** How the device talks: a broker or a serial line. It reconnects by itself and never throws. */
export interface DevicePort {
  /** Resolves once the port tries; whoever is on the other side may come later. */
  open(): Promise<void>;
  sendReadings(values: SensorValues, atMs: number): void;
  sendFeedback(feedback: DeviceFeedback): void;
  close(): Promise<void>;
}
