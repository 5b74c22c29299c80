import { SerialPort } from 'serialport';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { createFrameParser, encodeFrame, type SerialFrame } from '../../controller/links/serial/codec.ts';
import type { LogRecord } from '../../shared-types/log.ts';
import { expectSteadyTotals, expectWholeLog, loggedRecords } from '../support/log-checks.ts';
import type { Program } from '../support/process.ts';
import { openSerialLine, type SerialLine } from '../support/pty.ts';
import {
  clearNoonMs,
  clockFrom,
  type LoopFlags,
  startController,
  startDevice,
} from '../support/running-loop.ts';
import { serialContent, writeSite } from '../support/sites.ts';
import { type TemporaryFolder, temporaryFolder } from '../support/temporary.ts';
import { sleep, until } from '../support/wait.ts';

const site = 'quillhaven-wash-house';

/** Controller and device on a serial line, no broker anywhere. The log is the only witness. */
describe('the loop through a serial line that is unplugged for 10 s', () => {
  let line: SerialLine;
  let folder: TemporaryFolder;
  let flags: LoopFlags;
  let controller: Program;
  let device: Program;

  beforeAll(async () => {
    folder = temporaryFolder('loop');
    line = await openSerialLine();
    const content = serialContent(line.controllerPath, { control: { stepS: 3, outputExpiryS: 10 } });
    flags = {
      siteFile: writeSite(folder.file('site.yaml'), content),
      dataFolder: folder.file('data'),
      clock: clockFrom(clearNoonMs, 60),
      device: ['--serial', line.devicePath],
    };
    device = await startDevice(flags);
    controller = await startController(flags);
  });
  afterAll(async () => {
    await Promise.all([controller.stop('SIGKILL'), device.stop('SIGKILL')]);
    await line.remove();
    folder.remove();
  });

  const newest = (): LogRecord | undefined => loggedRecords(flags.dataFolder, site).at(-1);
  const waitForRecord = (what: string, wanted: (record: LogRecord) => boolean) =>
    until(
      what,
      async () => {
        // Reading the log is work; the loop needs the machine as well.
        await sleep(250);
        const record = newest();
        return record !== undefined && wanted(record) ? record : undefined;
      },
      60_000,
    );

  it('needs no broker', () => {
    expect(controller.output()).toContain(`controller ready: broker none site ${site}`);
  });

  it('runs the pump, falls safe unplugged, comes back by itself, and keeps its books', async () => {
    await waitForRecord(
      'the pump to run at the device',
      ({ input }) => (input.feedback?.pumpFraction ?? 0) > 0,
    );
    await line.unplug();
    await sleep(5000);
    const alone = await waitForRecord(
      'outputs that are safe on silence',
      ({ outcome }) => outcome.outputs.pumpFraction === 0 && outcome.failed.includes('panOutletC'),
    );
    await sleep(5000);
    await line.replug();
    await waitForRecord(
      'readings after the outage',
      ({ step, input }) => step > alone.step && (input.readings.panOutletC?.ageMs ?? Infinity) < 60_000,
    );
    const records = loggedRecords(flags.dataFolder, site);
    const first = records.find(
      ({ step, input }) => step > alone.step && (input.feedback?.ageMs ?? Infinity) < 60_000,
    );
    expect(first?.input.feedback).toMatchObject({ pumpFraction: 0, drainOpen: true });
    await sleep(1000);
    expect(await controller.stop('SIGTERM')).toEqual({ code: 0, signal: null });
    const all = loggedRecords(flags.dataFolder, site);
    expectWholeLog(all);
    expectSteadyTotals(all);
    expect(new Set(all.map(({ run }) => run)).size).toBe(1);
    expect(all.at(-1)?.outcome.total.pumpRunS).toBeGreaterThan(0);
  });
});

type Feedback = Extract<SerialFrame, { kind: 'feedback' }>;

/** The device alone; the test speaks as its controller, and falls silent. */
describe('the device on a serial line whose controller falls silent', () => {
  let line: SerialLine;
  let folder: TemporaryFolder;
  let device: Program;
  let port: SerialPort;
  const heard: SerialFrame[] = [];

  beforeEach(async () => {
    heard.length = 0;
    folder = temporaryFolder('device');
    line = await openSerialLine();
    port = new SerialPort({ path: line.controllerPath, baudRate: 115_200 });
    const parser = createFrameParser();
    port.on('data', (bytes) => {
      for (const item of parser.push(bytes)) if (item.ok) heard.push(item.frame);
    });
    device = await startDevice({
      siteFile: writeSite(folder.file('site.yaml'), serialContent(line.devicePath)),
      dataFolder: folder.path,
      clock: clockFrom(clearNoonMs, 10),
      device: [],
    });
  });
  afterEach(async () => {
    await device.stop('SIGKILL');
    port.close();
    await line.remove();
    folder.remove();
  });

  const feedback = (): Feedback | undefined => heard.findLast((frame) => frame.kind === 'feedback');
  const say = (bytes: Uint8Array | string) => port.write(bytes);
  const run = (sequence: number): Uint8Array =>
    encodeFrame({
      kind: 'outputs',
      sequence,
      pumpFraction: 1,
      drainOpen: false,
      drainPumpOn: false,
      exchangerPumpOn: false,
      expiresInMs: 10_000,
    });
  const spoiled = (sequence: number) => run(sequence).map((byte, at) => (at === 6 ? byte ^ 1 : byte));

  it('says hello, is safe before the first word, and answers with what it does', async () => {
    await until('the hello', () => heard.find(({ kind }) => kind === 'hello'));
    await until('readings', () => heard.find(({ kind }) => kind === 'readings'));
    await until('feedback', feedback);
    expect(feedback()).toMatchObject({ pumpFraction: 0, drainOpen: true, expired: true });
    say(run(1));
    await until('the pump to run', () => feedback()?.pumpFraction === 1);
    expect(feedback()).toMatchObject({ drainOpen: false, expired: false });
  });

  it('falls safe, and no damaged, repeated or older line renews anything', async () => {
    say(run(5));
    await until('the pump to run', () => feedback()?.pumpFraction === 1);
    for (let at = 0; feedback()?.expired === false; at++) {
      // Were one of these taken, the outputs would never expire.
      for (const line of [spoiled(6 + at), run(5), run(4), '!O 9 pump=1\n', '\n', '\0\xff\n']) say(line);
      await sleep(100);
      if (at > 300) throw new Error('the outputs were renewed by what is no renewal');
    }
    expect(feedback()).toMatchObject({ pumpFraction: 0, drainOpen: true, expired: true });
    say(run(7));
    await until('the pump to run again', () => feedback()?.pumpFraction === 1);
  });
});
