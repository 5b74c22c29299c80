import type { LinkReport } from '../../../controller/links/link.ts';
import {
  createFrameParser,
  encodeFrame,
  nextSequence,
  type SerialFrame,
} from '../../../controller/links/serial/codec.ts';
import type { MakePort } from '../../../controller/links/serial/port.ts';
import { serialLink } from '../../../controller/links/serial/serial-link.ts';
import { manualClock } from '../../support/manual-clock.ts';
import { serialContent, siteOf } from '../../support/sites.ts';
import type { HeardOutputs, LinkRig } from './contract.ts';

export type SerialRig = LinkRig & {
  /** Sends bytes as they are. */
  sendBytes(bytes: Uint8Array | string): Promise<void>;
  /** Sends a frame with a number of the test's choice. */
  sendFrame(frame: SerialFrame): Promise<void>;
  frames(): readonly SerialFrame[];
};

export interface SerialRigParts {
  readonly path: string;
  readonly makePort?: MakePort;
  /** Writes to the link's end of the line. */
  write(bytes: Uint8Array): Promise<void>;
  /** Is told what the link wrote. */
  listen(take: (bytes: Uint8Array) => void): void;
  cut(): Promise<void>;
  restore(): Promise<void>;
  dispose(): Promise<void>;
}

/** A link over a serial line with a device's codec on the far end. */
export function serialRig(parts: SerialRigParts): SerialRig {
  const clock = manualClock();
  const reports: LinkReport[] = [];
  const frames: SerialFrame[] = [];
  let sequence = 0;
  const link = serialLink({
    site: siteOf(serialContent(parts.path)),
    clock,
    path: parts.path,
    baud: 115_200,
    report: (report) => reports.push(report),
    ...(parts.makePort === undefined ? {} : { makePort: parts.makePort }),
  });
  const parser = createFrameParser();
  parts.listen((bytes) => {
    for (const item of parser.push(bytes)) if (item.ok) frames.push(item.frame);
  });
  const sendFrame = (frame: SerialFrame) => parts.write(encodeFrame(frame));
  const number = () => {
    sequence = nextSequence(sequence);
    return sequence;
  };
  return {
    link,
    clock,
    reports,
    frames: () => frames,
    heard: () => frames.flatMap((frame) => (frame.kind === 'outputs' ? [heardOutputs(frame)] : [])),
    sendFrame,
    sendBytes: (bytes) => parts.write(typeof bytes === 'string' ? new TextEncoder().encode(bytes) : bytes),
    sendReadings: (values) => sendFrame({ kind: 'readings', sequence: number(), values: { ...values } }),
    sendFeedback: (pumpFraction, drainOpen) =>
      sendFrame({
        kind: 'feedback',
        sequence: number(),
        pumpFraction,
        drainOpen,
        drainPumpOn: false,
        exchangerPumpOn: false,
        expired: false,
      }),
    sendRubbish: () => parts.write(new Uint8Array([0x00, 0xff, 0x2a, 0x0a])),
    cut: parts.cut,
    restore: parts.restore,
    dispose: parts.dispose,
  };
}

function heardOutputs({
  kind,
  sequence,
  ...outputs
}: Extract<SerialFrame, { kind: 'outputs' }>): HeardOutputs {
  return outputs;
}
