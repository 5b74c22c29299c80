import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { encodeFrame, type SerialFrame } from '../../../../controller/links/serial/codec.ts';
import type { Port } from '../../../../controller/links/serial/port.ts';
import { serialLink } from '../../../../controller/links/serial/serial-link.ts';
import { manualClock } from '../../../support/manual-clock.ts';
import { serialContent, siteOf } from '../../../support/sites.ts';
import { until } from '../../../support/wait.ts';
import { linkContract } from '../contract.ts';
import type { SerialRig } from '../serial-rig.ts';
import { mockRig } from './mock-line.ts';

linkContract('serial line in memory', async () => mockRig());

const reading = (sequence: number, value: number): SerialFrame => ({
  kind: 'readings',
  sequence,
  values: { panOutletC: value },
});
const hello = (sequence: number, version: number): SerialFrame => ({
  kind: 'hello',
  sequence,
  version,
  role: 'device',
});
const outputs = {
  schema: 1,
  sequence: 9,
  pumpFraction: 1,
  drainOpen: false,
  drainPumpOn: false,
  exchangerPumpOn: false,
  expiresInMs: 60_000,
} as const;

/** A port that opens, closes and says nothing. */
const idlePort: Port = {
  isOpen: true,
  writableLength: 0,
  open: (done) => done(null),
  close: (done) => done(null),
  drain: (done) => done(null),
  write: () => true,
  on: () => undefined,
};

describe('serial link', () => {
  let rig: SerialRig;
  beforeEach(async () => {
    rig = mockRig();
    await rig.link.open();
  });
  afterEach(async () => {
    await rig.link.close();
    await rig.dispose();
  });
  const outletC = () => rig.link.readings().panOutletC?.value;
  const ignored = (count: number) => until(`${count} ignored`, () => rig.link.health().ignored === count);

  it('says hello when it opens the port', async () => {
    await until('the hello', () => rig.frames().length > 0);
    expect(rig.frames()[0]).toMatchObject({ kind: 'hello', version: 1, role: 'controller' });
  });

  it('numbers its lines without a gap', async () => {
    for (let count = 0; count < 3; count++) rig.link.apply(outputs);
    await until('the outputs', () => rig.heard().length === 3);
    const first = rig.frames()[0]?.sequence ?? -1;
    expect(rig.frames().map(({ sequence }) => sequence - first)).toEqual([0, 1, 2, 3]);
  });

  it('tells of a heat dump where it is told of one', async () => {
    rig.link.apply({ ...outputs, heatDumpOn: true });
    rig.link.apply(outputs);
    await until('the outputs', () => rig.heard().length === 2);
    expect(rig.heard().map(({ heatDumpOn }) => heatDumpOn)).toEqual([true, undefined]);
  });

  it('ignores a line that comes twice', async () => {
    await rig.sendFrame(reading(7, 20));
    await until('the reading', () => outletC() === 20);
    await rig.sendFrame(reading(7, 90));
    await ignored(1);
    expect(outletC()).toBe(20);
    expect(rig.link.health().lastIgnored).toContain('duplicate');
  });

  it('ignores a line that is older than one it has taken', async () => {
    await rig.sendFrame(reading(7, 20));
    await rig.sendFrame(reading(5, 90));
    await ignored(1);
    expect(outletC()).toBe(20);
    expect(rig.link.health().lastIgnored).toContain('old');
  });

  it.each([1, 0, 40_000, 65_535])(
    'takes the number %i after a hello, and counts on from there',
    async (number) => {
      await rig.sendFrame(reading(700, 20));
      await rig.sendFrame(hello(0, 1));
      await rig.sendFrame(reading(number, 21));
      await rig.sendFrame(reading(number, 90));
      await ignored(1);
      expect(outletC()).toBe(21);
      expect(rig.link.health()).toMatchObject({
        taken: 3,
        lastIgnored: expect.stringContaining('duplicate'),
      });
    },
  );

  it('hears nothing from a device of another version and tells it nothing, until a hello that fits', async () => {
    await rig.sendFrame(hello(0, 2));
    await rig.sendFrame(reading(1, 50));
    await ignored(2);
    expect(rig.link.apply(outputs)).toBe(false);
    expect(rig.link.readings()).toEqual({});
    await rig.sendFrame(hello(0, 1));
    await rig.sendFrame(reading(1, 51));
    await until('the reading', () => outletC() === 51);
    expect(rig.link.apply({ ...outputs, pumpFraction: 0 })).toBe(true);
    await until('outputs', () => rig.heard().length > 0);
    expect(rig.heard().map(({ pumpFraction }) => pumpFraction)).toEqual([0]);
  });

  it('notices a line that brings back what it sends', async () => {
    await rig.sendFrame({ kind: 'hello', sequence: 0, version: 1, role: 'controller' });
    await rig.sendFrame({ ...outputs, kind: 'outputs', sequence: 3 });
    await ignored(2);
    expect(rig.reports).toEqual([
      { kind: 'message-ignored', text: 'the line brings back what the controller sends' },
    ]);
  });

  it('passes on what a sensor says of itself', async () => {
    await rig.sendFrame({
      kind: 'readings',
      sequence: 1,
      values: { panOutletC: 'open-circuit', panSheetC: 'short-circuit', ambientC: 'unreadable', other: 5 },
    });
    await until('the faults', () => rig.link.readings().ambientC);
    expect(rig.link.readings()).toEqual({
      panOutletC: { value: null, fault: 'open-circuit', ageMs: 0 },
      panSheetC: { value: null, fault: 'short-circuit', ageMs: 0 },
      ambientC: { value: null, fault: 'unreadable', ageMs: 0 },
    });
  });

  it('drops outputs that cannot stand on the line, and does not throw', async () => {
    expect(rig.link.apply({ ...outputs, pumpFraction: Number.NaN })).toBe(false);
    rig.link.apply(outputs);
    await until('the good outputs', () => rig.heard().length === 1);
    expect(rig.heard()[0]?.pumpFraction).toBe(1);
    expect(rig.link.health().ignored).toBe(1);
  });

  it('says that outputs do not leave over a line that takes no more bytes', async () => {
    const full = { ...idlePort, writableLength: 1025 };
    const stuck = serialLink({
      site: siteOf(serialContent('/dev/stuck')),
      clock: manualClock(),
      path: '/dev/stuck',
      baud: 115_200,
      report: () => undefined,
      makePort: () => full,
    });
    await stuck.open();
    expect(stuck.apply(outputs)).toBe(false);
    full.writableLength = 1024;
    expect(stuck.apply(outputs)).toBe(true);
    await stuck.close();
  });

  it('takes up again after a cable was pulled in the middle of a line', async () => {
    const line = encodeFrame(reading(5, 99));
    await rig.sendBytes(new Uint8Array([...encodeFrame(reading(4, 20)), ...line.subarray(0, 12)]));
    await until('the reading before the half line', () => outletC() === 20);
    await rig.cut();
    await rig.restore();
    await until('the port to be open again', () => rig.link.health().connected);
    await rig.sendBytes(line.subarray(12));
    await rig.sendFrame(reading(2, 44));
    await until('the reading', () => outletC() === 44);
    expect(rig.link.health()).toMatchObject({ taken: 2, lastIgnored: 'bytes outside any line' });
  });
});
