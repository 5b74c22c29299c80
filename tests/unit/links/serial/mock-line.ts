import { SerialPortMock } from 'serialport';
import { until } from '../../../support/wait.ts';
import { type SerialRig, serialRig } from '../serial-rig.ts';

/** A line that exists in memory only. There is one at a time. */
export function mockRig(): SerialRig {
  const path = '/dev/mock';
  const { binding } = SerialPortMock;
  let port: SerialPortMock | undefined;
  let take: (bytes: Uint8Array) => void = () => undefined;
  binding.createPort(path);
  return serialRig({
    path,
    makePort: (_path, baud) => {
      const made = new SerialPortMock({ path, baudRate: baud, autoOpen: false });
      const write = made.write.bind(made);
      const heard = (bytes: Uint8Array, done: (error: Error | null | undefined) => void) => {
        take(bytes);
        return write(bytes, done);
      };
      port = made;
      return Object.assign(made, { write: heard });
    },
    write: async (bytes) => {
      const opened = await until('the open port', () => (port?.isOpen ? port.port : undefined));
      opened.emitData(Buffer.from(bytes));
    },
    listen: (listener) => {
      take = listener;
    },
    cut: async () => {
      const cut = port;
      binding.reset();
      if (cut?.isOpen) await new Promise<void>((resolve) => cut.close(() => resolve()));
    },
    restore: async () => binding.createPort(path),
    dispose: async () => binding.reset(),
  });
}
