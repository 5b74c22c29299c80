import { SerialPort } from 'serialport';
import {
  createFrameParser,
  createSequenceGuard,
  encodeFrame,
  nextSequence,
  protocolVersion,
  type SerialFrame,
  splitReadings,
} from '../../controller/links/serial/codec.ts';
import type { Site } from '../../shared-types/site.ts';
import type { SensorValues } from '../plant/sensors.ts';
import type { DevicePort, PortEvents } from './port.ts';
import { type SentValue, sentReadings } from './sent-values.ts';

export interface SerialPortOptions {
  readonly site: Site;
  readonly path: string;
  readonly baud: number;
}

const reopenAfterMs = 1000;
/** A line that is not drained is not filled further: what it holds would be old when it arrives. */
const mostWaitingBytes = 4096;

/** The device on a serial line. Damaged, old and repeated lines are refused. */
export function createSerialPort(options: SerialPortOptions, events: PortEvents): DevicePort {
  const { site, path, baud } = options;
  const guard = createSequenceGuard();
  let port: SerialPort | undefined;
  let sequence = 0;
  let understands = true;
  let closed = false;
  let retry: NodeJS.Timeout | undefined;

  const send = (frame: Unnumbered) => {
    if (port?.isOpen !== true || port.writableLength > mostWaitingBytes || !events.powered()) return;
    port.write(encodeFrame({ ...frame, sequence } as SerialFrame));
    sequence = nextSequence(sequence);
  };
  const hello = () => send({ kind: 'hello', version: protocolVersion, role: 'device' });
  const take = (frame: SerialFrame) => {
    if (frame.kind === 'hello' && frame.role === 'controller') return takeHello(frame.version);
    if (!understands || frame.kind !== 'outputs') return;
    if (guard.judge(frame.sequence) === 'new') events.outputs(frame);
  };
  const takeHello = (version: number) => {
    guard.restart();
    understands = version === protocolVersion;
    hello();
  };
  const openPort = () => {
    const opened = new SerialPort({ path, baudRate: baud, autoOpen: false });
    const parser = createFrameParser();
    port = opened;
    opened.on('data', (bytes: Uint8Array) => {
      for (const item of parser.push(bytes)) if (item.ok) take(item.frame);
    });
    // A failed write is followed by 'close'; there is nothing more to do about it.
    opened.on('error', () => undefined);
    opened.on('close', () => reopen('lost'));
    opened.open((error) => {
      if (error !== null) return reopen(error.message);
      guard.restart();
      understands = true;
      hello();
    });
  };
  const said = new Set<string>();
  const reopen = (why: string) => {
    if (closed) return;
    if (!said.has(why)) events.say(`serial port ${path}: ${why}; trying again`);
    said.add(why);
    retry = setTimeout(openPort, reopenAfterMs);
  };

  return {
    open: async () => openPort(),
    sendReadings: (values) => {
      for (const part of splitReadings(keyed(values, site))) send({ kind: 'readings', values: part });
    },
    sendFeedback: (feedback) => send({ kind: 'feedback', ...feedback }),
    close: async () => {
      closed = true;
      clearTimeout(retry);
      const open = port;
      if (open?.isOpen === true) await new Promise<void>((resolve) => open.close(() => resolve()));
    },
  };
}

type Unnumbered = SerialFrame extends infer Frame
  ? Frame extends SerialFrame
    ? Omit<Frame, 'sequence'>
    : never
  : never;

function keyed(values: SensorValues, site: Site): Record<string, SentValue> {
  const byKey: Record<string, SentValue> = {};
  for (const [, sensor, value] of sentReadings(values, site))
    if (sensor.key !== undefined) byKey[sensor.key] = value;
  return byKey;
}
