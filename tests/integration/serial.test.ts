import { SerialPort } from 'serialport';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { encodeFrame, type SerialFrame } from '../../controller/links/serial/codec.ts';
import { openSerialLine } from '../support/pty.ts';
import { until } from '../support/wait.ts';
import { linkContract } from '../unit/links/contract.ts';
import { type SerialRig, serialRig } from '../unit/links/serial-rig.ts';

/** A link on one end of a pseudo terminal pair, the test on the other. */
async function ptyRig(): Promise<SerialRig> {
  const line = await openSerialLine();
  let take: (bytes: Uint8Array) => void = () => undefined;
  let far = await openPort(line.devicePath, (bytes) => take(bytes));
  return serialRig({
    path: line.controllerPath,
    write: (bytes) =>
      new Promise((resolve, reject) => {
        far.write(bytes, (error) => (error ? reject(error) : resolve()));
      }),
    listen: (listener) => {
      take = listener;
    },
    cut: async () => {
      await line.unplug();
      await closePort(far);
    },
    restore: async () => {
      await line.replug();
      far = await openPort(line.devicePath, (bytes) => take(bytes));
    },
    dispose: async () => {
      await closePort(far);
      await line.remove();
    },
  });
}

function openPort(path: string, take: (bytes: Uint8Array) => void): Promise<SerialPort> {
  return new Promise((resolve, reject) => {
    const port = new SerialPort({ path, baudRate: 115_200, autoOpen: false });
    port.on('data', take);
    port.on('error', () => undefined);
    port.open((error) => (error === null ? resolve(port) : reject(error)));
  });
}

async function closePort(port: SerialPort): Promise<void> {
  if (port.isOpen) await new Promise<void>((resolve) => port.close(() => resolve()));
}

linkContract('serial line over a pseudo terminal', ptyRig);

const reading = (sequence: number, value: number): SerialFrame => ({
  kind: 'readings',
  sequence,
  values: { panOutletC: value },
});
const text = (frame: SerialFrame) => new TextDecoder().decode(encodeFrame(frame));
/** The same line with another last digit of its check. */
const spoil = (line: string) => line.replace(/.\n$/, (end) => (end === '0\n' ? '1\n' : '0\n'));

describe('a bad serial line', () => {
  let rig: SerialRig;
  beforeEach(async () => {
    rig = await ptyRig();
    await rig.link.open();
    await until('the connection', () => rig.link.health().connected);
    await rig.sendFrame(reading(1, 20));
    await until('the first reading', () => rig.link.readings().panOutletC?.value === 20);
  });
  afterEach(async () => {
    await rig.link.close();
    await rig.dispose();
  });

  interface BadLine {
    readonly what: string;
    readonly bytes: string | Uint8Array;
    readonly cause: string;
  }
  const badLines: readonly BadLine[] = [
    {
      what: 'garbage bytes',
      bytes: new Uint8Array([0, 0xff, 0x80, 0x7f, 0x2a, 0x0a]),
      cause: 'bytes outside any line',
    },
    { what: 'a half line', bytes: '!R 2 panOutletC=9\n', cause: 'a line that is not whole' },
    { what: 'a wrong CRC', bytes: spoil(text(reading(2, 95))), cause: 'a line whose CRC is wrong' },
    { what: 'a repeated number', bytes: text(reading(1, 95)), cause: 'that is duplicate' },
    { what: 'an older number', bytes: text(reading(0, 95)), cause: 'that is old' },
    { what: 'an endless line', bytes: `!${'x'.repeat(5000)}\n`, cause: 'a line that is too long' },
  ];
  it.each(badLines)('$what: counted, said once, no reading changed', async ({ bytes, cause }) => {
    for (let count = 1; count <= 2; count++) {
      await rig.sendBytes(bytes);
      await until('the count', () => rig.link.health().ignored === count);
    }
    expect(rig.reports).toHaveLength(1);
    expect(rig.link.health().lastIgnored).toContain(cause);
    expect(rig.link.readings().panOutletC?.value).toBe(20);
    await rig.sendFrame(reading(2, 21));
    await until('the next reading', () => rig.link.readings().panOutletC?.value === 21);
    expect(rig.link.health()).toMatchObject({ taken: 2, ignored: 2, losses: 0 });
  });

  it('unplugged and plugged in again in the middle of a line: nothing of it is taken', async () => {
    const line = encodeFrame(reading(3, 95));
    await rig.sendBytes(new Uint8Array([...encodeFrame(reading(2, 21)), ...line.subarray(0, 14)]));
    await until('the reading before the half line', () => rig.link.readings().panOutletC?.value === 21);
    await rig.cut();
    await until('the loss', () => !rig.link.health().connected);
    await rig.restore();
    await until('the return', () => rig.link.health().connected);
    await rig.sendBytes(line.subarray(14));
    await rig.sendFrame(reading(0, 22));
    await until('the reading', () => rig.link.readings().panOutletC?.value === 22);
    expect(rig.link.health()).toMatchObject({ taken: 3, losses: 1 });
    expect(rig.reports.map(({ kind }) => kind)).toEqual(['link-lost', 'link-back', 'message-ignored']);
  });

  it('unplugged five times: each time it comes back', async () => {
    for (let times = 1; times <= 5; times++) {
      await rig.cut();
      await until('the loss', () => rig.link.health().losses === times && !rig.link.health().connected);
      await rig.restore();
      await until('the return', () => rig.link.health().connected);
      await rig.sendFrame(reading(0, 30 + times));
      await until('a reading', () => rig.link.readings().panOutletC?.value === 30 + times);
    }
  });
});
