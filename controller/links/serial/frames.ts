import type { SensorFault } from '../../../shared-types/readings.ts';

/** Version of the line protocol that PROTOCOL.md beside this file describes. */
export const protocolVersion = 1;
/** Longest line in bytes, from the start mark up to and with the line feed. */
export const maximumLineBytes = 512;
/** Sequence numbers run from 0 to one less than this, then begin again. */
export const sequenceModulus = 65_536;

/** One line of the serial protocol. `sequence` is the sender's running number, 0 to 65535. */
export type SerialFrame =
  | {
      readonly kind: 'hello';
      readonly sequence: number;
      readonly version: number;
      readonly role: 'device' | 'controller';
    }
  | {
      readonly kind: 'readings';
      readonly sequence: number;
      /** By the key that the site file names; a number as the sensor sends it, or what failed. */
      readonly values: Readonly<Record<string, number | SensorFault>>;
    }
  | {
      readonly kind: 'feedback';
      readonly sequence: number;
      /** 0 to 1; kept to three decimals on the line. */
      readonly pumpFraction: number;
      /** Null when the device cannot tell. */
      readonly drainOpen: boolean | null;
      readonly drainPumpOn: boolean;
      readonly exchangerPumpOn: boolean;
      /** Absent where the device has no such output. */
      readonly heatDumpOn?: boolean | undefined;
      /** True while the outputs stand safe because nobody renewed them. */
      readonly expired: boolean;
    }
  | {
      readonly kind: 'outputs';
      readonly sequence: number;
      /** 0 to 1; kept to three decimals on the line. */
      readonly pumpFraction: number;
      readonly drainOpen: boolean;
      readonly drainPumpOn: boolean;
      readonly exchangerPumpOn: boolean;
      /** Absent where the site has none, and then off. */
      readonly heatDumpOn?: boolean | undefined;
      /** 1000 to 600000. */
      readonly expiresInMs: number;
    };

/** Why bytes on the line made no frame. */
export type FrameFault =
  /** Bytes outside any line. */
  | 'noise'
  /** A line that ended, or was followed by another, before it was whole. */
  | 'half-line'
  | 'too-long'
  | 'wrong-crc'
  /** Whole and unharmed, but of a kind that this version does not know. */
  | 'unknown-kind'
  /** Whole and unharmed, but a field is missing, double, or not what it has to be. */
  | 'wrong-fields';

export type Parsed =
  | { readonly ok: true; readonly frame: SerialFrame }
  | { readonly ok: false; readonly fault: FrameFault };
