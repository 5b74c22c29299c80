/**
 * The line protocol between controller and device: bytes to frames and back, and the rule for
 * sequence numbers. It knows no port. PROTOCOL.md beside this file describes it for firmware authors.
 */
export { encodeFrame, splitReadings } from './encode.ts';
export { type Parsed, protocolVersion, type SerialFrame } from './frames.ts';
export { createFrameParser } from './parse.ts';
export { createSequenceGuard, nextSequence } from './sequence.ts';
