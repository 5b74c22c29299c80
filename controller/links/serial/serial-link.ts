import type { OutputMessage } from '../../../shared-types/messages.ts';
import type { Site } from '../../../shared-types/site.ts';
import type { Clock } from '../../clock.ts';
import type { LinkReport, LoopLink } from '../link.ts';
import { createLinkLedger } from '../link-ledger.ts';
import { createReadingShelf } from '../reading-shelf.ts';
import { encodeFrame } from './encode.ts';
import { createFrameReader } from './frame-reader.ts';
import { protocolVersion, type SerialFrame } from './frames.ts';
import { keepPortOpen } from './keep-open.ts';
import { type MakePort, systemPort } from './port.ts';
import { nextSequence } from './sequence.ts';

export interface SerialLinkOptions {
  readonly site: Site;
  readonly clock: Clock;
  readonly path: string;
  readonly baud: number;
  readonly report: (report: LinkReport) => void;
  readonly makePort?: MakePort;
}

/** The loop behind a serial line that speaks the protocol of PROTOCOL.md beside this file. */
export function serialLink(options: SerialLinkOptions): LoopLink {
  const ledger = createLinkLedger('serial', `serial port ${options.path}`, options.report);
  const shelf = createReadingShelf(options.clock);
  const reader = createFrameReader(options.site, shelf, ledger);
  let sequence = 0;

  /** Builds a line with the next number and sends it; whatever can't go out is dropped, counted and told. */
  const send = (build: (sequence: number) => SerialFrame): boolean => {
    const bytes = encode(build(sequence));
    sequence = nextSequence(sequence);
    const left = bytes !== undefined && port.write(bytes);
    if (bytes === undefined) ledger.ignored('outputs dropped: they do not fit the protocol');
    else if (!left) ledger.ignored('outputs dropped: the serial line does not take them');
    return left;
  };
  const port = keepPortOpen(options.path, options.baud, options.makePort ?? systemPort, {
    opened: () => {
      reader.restart();
      ledger.connected();
      send((sequence) => ({ kind: 'hello', sequence, version: protocolVersion, role: 'controller' }));
    },
    bytes: reader.take,
    lost: ledger.disconnected,
  });
  return {
    open: port.open,
    readings: shelf.readings,
    feedback: shelf.feedback,
    apply: (message) => port.isOpen() && reader.understands() && send(outputsFrame(message)),
    health: ledger.health,
    close: port.close,
  };
}

/** The link numbers its own lines; the message's number stays behind. */
function outputsFrame(message: OutputMessage): (sequence: number) => SerialFrame {
  const { pumpFraction, drainOpen, drainPumpOn, exchangerPumpOn, heatDumpOn, expiresInMs } = message;
  const outputs = { pumpFraction, drainOpen, drainPumpOn, exchangerPumpOn, heatDumpOn, expiresInMs };
  return (sequence) => ({ kind: 'outputs', sequence, ...outputs });
}

/** A link never throws: outputs that cannot stand on the line give nothing. */
function encode(frame: SerialFrame): Uint8Array | undefined {
  try {
    return encodeFrame(frame);
  } catch {
    return undefined;
  }
}
