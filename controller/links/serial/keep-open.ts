import { boundedWait } from '../bounded-wait.ts';
import type { MakePort, Port } from './port.ts';

const firstRetryMs = 250;
const longestRetryMs = 5000;
const retryGrowth = 2;
/** How often an empty line is sent, which means nothing to a device. */
const probeEveryMs = 1000;
const emptyLine = new Uint8Array([0x0a]);
/** Bytes that may wait for a line that takes none; a few output lines. */
const longestBacklogBytes = 1024;
/** Time for the last outputs to leave before the port is closed. */
const goodbyeMs = 500;

export interface PortEvents {
  opened(): void;
  bytes(bytes: Uint8Array): void;
  lost(cause: string): void;
}

export interface KeptPort {
  /** Resolves when the first attempt has ended, well or badly. */
  open(): Promise<void>;
  isOpen(): boolean;
  /** @returns false when the bytes were dropped: port not open, or the line takes none. */
  write(bytes: Uint8Array): boolean;
  close(): Promise<void>;
}

/**
 * A serial port that is opened again, with growing waits, whenever it could not be opened or was lost.
 *
 * It is always being read, since only a port that is read notices by itself that it was unplugged. Even
 * that fails now and then: a read that is under way while a terminal hangs up ends with no bytes and no
 * error, and the package tries again for ever. A write to such a port fails at once, hence the probe.
 */
export function keepPortOpen(path: string, baud: number, makePort: MakePort, events: PortEvents): KeptPort {
  let current: Port | undefined;
  let retryTimer: NodeJS.Timeout | undefined;
  let probeTimer: NodeJS.Timeout | undefined;
  let retryMs = firstRetryMs;
  let closing = false;

  const attempt = (): Promise<void> =>
    new Promise((resolve) => {
      const port = makePort(path, baud);
      port.on('data', events.bytes);
      port.on('error', (error) => lose(port, error?.message ?? 'the port failed'));
      port.on('close', (error) => lose(port, error?.message ?? 'the port closed'));
      port.open((error) => {
        if (error !== null) fail(error.message);
        else hold(port);
        resolve();
      });
    });

  const hold = (port: Port): void => {
    if (closing) return void port.close(() => undefined);
    current = port;
    retryMs = firstRetryMs;
    probeTimer = setInterval(() => write(emptyLine), probeEveryMs);
    events.opened();
  };
  /** Called by whatever notices first; later notices of the same loss change nothing. */
  const lose = (port: Port, cause: string): void => {
    if (current !== port) return;
    current = undefined;
    clearInterval(probeTimer);
    if (port.isOpen) port.close(() => undefined);
    fail(cause);
  };
  const fail = (cause: string): void => {
    if (closing) return;
    events.lost(cause);
    retryTimer = setTimeout(attempt, retryMs);
    retryMs = Math.min(longestRetryMs, retryMs * retryGrowth);
  };

  const write = (bytes: Uint8Array): boolean => {
    const port = current;
    if (port === undefined || port.writableLength > longestBacklogBytes) return false;
    port.write(bytes, (error) => {
      if (error) lose(port, error.message);
    });
    return true;
  };

  return {
    open: attempt,
    isOpen: () => current !== undefined,
    write,
    close: async () => {
      closing = true;
      clearTimeout(retryTimer);
      clearInterval(probeTimer);
      const port = current;
      current = undefined;
      if (port === undefined) return;
      await boundedWait(new Promise((resolve) => port.drain(resolve)), goodbyeMs);
      await boundedWait(new Promise((resolve) => port.close(resolve)), goodbyeMs);
    },
  };
}
