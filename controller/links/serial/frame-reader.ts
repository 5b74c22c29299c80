import type { Channel } from '../../../shared-types/channels.ts';
import type { SensorFault } from '../../../shared-types/readings.ts';
import type { Sensor, Site } from '../../../shared-types/site.ts';
import type { LinkLedger } from '../link-ledger.ts';
import type { ReadingShelf } from '../reading-shelf.ts';
import { readSensor } from '../sensor-value.ts';
import { type FrameFault, protocolVersion, type SerialFrame } from './frames.ts';
import { createFrameParser } from './parse.ts';
import { createSequenceGuard } from './sequence.ts';

export interface FrameReader {
  take(bytes: Uint8Array): void;
  /** The line was plugged in anew: what was half heard is gone, numbers begin anywhere. */
  restart(): void;
  /** False while the device says that it speaks another version of the protocol. */
  understands(): boolean;
}

const faultTexts: Readonly<Record<FrameFault, string>> = {
  noise: 'bytes outside any line',
  'half-line': 'a line that is not whole',
  'too-long': 'a line that is too long',
  'wrong-crc': 'a line whose CRC is wrong',
  'unknown-kind': 'a line of an unknown kind',
  'wrong-fields': 'a line with wrong fields',
};

const echoed = 'the line brings back what the controller sends';

/** Takes the device's bytes and puts what they say on the shelf; what cannot be used is counted. */
export function createFrameReader(site: Site, shelf: ReadingShelf, ledger: LinkLedger): FrameReader {
  const guard = createSequenceGuard();
  const channelsByKey = groupByKey(site);
  let parser = createFrameParser();
  let understood = true;

  // Each gives the cause when it ignores the frame.
  const takeHello = (frame: Extract<SerialFrame, { kind: 'hello' }>): string | undefined => {
    if (frame.role !== 'device') return echoed;
    guard.restart();
    understood = frame.version === protocolVersion;
    if (understood) return undefined;
    return `the device speaks version ${frame.version} of the protocol, not ${protocolVersion}`;
  };
  const takeReadings = (values: Readonly<Record<string, number | SensorFault>>): string | undefined => {
    let cause: string | undefined;
    for (const [key, sent] of Object.entries(values))
      for (const [channel, sensor] of channelsByKey.get(key) ?? []) {
        const value = typeof sent === 'number' ? readSensor(sent, sensor) : { value: null, fault: sent };
        if (value === undefined) cause = `${key}: no usable number for ${channel}`;
        else shelf.put(channel, value);
      }
    return cause;
  };
  const takeFrame = (frame: SerialFrame): string | undefined => {
    if (frame.kind === 'hello') return takeHello(frame);
    if (frame.kind === 'outputs') return echoed;
    if (!understood) return 'a line of a device that speaks another version';
    const verdict = guard.judge(frame.sequence);
    if (verdict !== 'new') return `a line with a sequence number that is ${verdict}`;
    if (frame.kind === 'readings') return takeReadings(frame.values);
    shelf.putFeedback({ pumpFraction: frame.pumpFraction, drainOpen: frame.drainOpen });
    return undefined;
  };
  return {
    take: (bytes) => {
      for (const item of parser.push(bytes)) {
        const cause = item.ok ? takeFrame(item.frame) : faultTexts[item.fault];
        if (cause === undefined) ledger.taken();
        else ledger.ignored(cause);
      }
    },
    restart: () => {
      parser = createFrameParser();
      guard.restart();
      understood = true;
    },
    understands: () => understood,
  };
}

function groupByKey(site: Site): Map<string, [Channel, Sensor][]> {
  const groups = new Map<string, [Channel, Sensor][]>();
  for (const [channel, sensor] of Object.entries(site.sensors) as [Channel, Sensor][]) {
    if (sensor.key === undefined) continue;
    groups.set(sensor.key, [...(groups.get(sensor.key) ?? []), [channel, sensor]]);
  }
  return groups;
}
