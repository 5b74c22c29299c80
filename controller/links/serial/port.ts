import { SerialPort } from 'serialport';

/** What the link needs of a serial port; the package's own mock has it as well. */
export interface Port {
  readonly isOpen: boolean;
  readonly writableLength: number;
  open(done: (error: Error | null) => void): void;
  close(done: (error: Error | null) => void): void;
  drain(done: (error: Error | null) => void): void;
  write(bytes: Uint8Array, done: (error: Error | null | undefined) => void): boolean;
  on(event: 'data', listener: (bytes: Uint8Array) => void): unknown;
  on(event: 'close' | 'error', listener: (error?: Error | null) => void): unknown;
}

/** Makes a port that is not open yet. */
export type MakePort = (path: string, baud: number) => Port;

export const systemPort: MakePort = (path, baud) => new SerialPort({ path, baudRate: baud, autoOpen: false });
