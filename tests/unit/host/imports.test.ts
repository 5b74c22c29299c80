import { copyFileSync, existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { logPath } from '../../../controller/log/log.ts';
import { openLogWriter } from '../../../controller/log/writer.ts';
import { createHost, type MonitorHost } from '../../../desktop/host/host.ts';
import { lookOnlyApi } from '../../../desktop/web/look-only.ts';
import { importMethods, pieceBytes } from '../../../shared-types/foreign-log.ts';
import type { MonitorMethod, MonitorParams, MonitorResult } from '../../../shared-types/monitor-api.ts';
import { defaultSettings, settingsSchema } from '../../../shared-types/settings.ts';
import { logRecord } from '../../support/log-records.ts';
import { demoContent, siteOf } from '../../support/sites.ts';
import { temporaryFolder } from '../../support/temporary.ts';

const site = siteOf(demoContent({ timeZone: 'Etc/UTC' }));
const imported = `${site.name}-imported`;
const map: MonitorParams<'keepColumnMap'>['map'] = {
  time: { column: 'Time' },
  values: [{ column: 'Roof', channel: 'panOutletC', unit: 'C' }],
  pump: { column: 'Pump', unit: 'on-off' },
};
const csv = 'Time,Roof,Pump\r\n2031-06-21T08:00:00Z,40,on\r\n2031-06-21T08:01:00Z,hot,on\r\n';
const soon = { timeout: 20_000, interval: 50 };
/** Long enough for a name of a job. */
const job = 'job-00000001';

let cleanUp: (() => Promise<void>)[] = [];
afterEach(async () => {
  for (const clean of cleanUp) await clean();
  cleanUp = [];
});

/** A host without a broker, beside the log of a loop whose controller ran here once. */
function hostBesideLog() {
  const folder = temporaryFolder('imports');
  const writer = openLogWriter(logPath(folder.path, site.name));
  const run = writer.startRun('engine 1', 0);
  writer.keepSite(site, 0);
  writer.keepSettings(settingsSchema.parse({ ...defaultSettings, ...site.settings }), 0);
  writer.append(logRecord(1, { run }));
  writer.close();
  const open = () => createHost({ brokerUrl: 'mqtt://127.0.0.1:9', dataFolder: folder.path });
  const host = open();
  cleanUp.push(async () => {
    await host.close();
    folder.remove();
  });
  return { host, folder, open };
}

async function answered<M extends MonitorMethod>(host: MonitorHost, method: M, params: MonitorParams<M>) {
  const reply = await host.call(method, params);
  if (!reply.ok) throw new Error(reply.problem.text);
  return reply.result as MonitorResult<M>;
}

async function upload(host: MonitorHost, text: string): Promise<string> {
  const content = Buffer.from(text);
  const { upload } = await answered(host, 'beginUpload', { bytes: content.length });
  for (let at = 0; at < content.length; at += pieceBytes) {
    const base64 = content.subarray(at, at + pieceBytes).toString('base64');
    await answered(host, 'uploadPiece', { upload, at, base64 });
  }
  return upload;
}

describe('days of another logger', () => {
  test('come over the wire, are looked at, taken in, and stand as a site of their own', async () => {
    const { host, open } = hostBesideLog();
    const events: unknown[] = [];
    host.listen((event) => events.push(event));
    const file = await upload(host, csv);
    const head = await answered(host, 'uploadHead', { upload: file, form: {} });
    expect(head).toMatchObject({ header: ['Time', 'Roof', 'Pump'], delimiter: ',' });
    expect(head.rows[1]).toEqual(['2031-06-21T08:01:00Z', 'hot', 'on']);

    const asked = { site: site.name, upload: file, map, clash: 'keep', job } as const;
    const looked = await answered(host, 'importDays', { ...asked, write: false });
    expect(looked).toMatchObject({ report: { stepsAdded: 2 } });
    expect(await answered(host, 'sites', {})).toEqual([]);

    const done = await answered(host, 'importDays', { ...asked, write: true });
    expect(done).toMatchObject({ site: imported, report: { stepsAdded: 2, misses: { 'not-a-number': 1 } } });
    const days = await answered(host, 'days', { site: imported });
    expect(days).toMatchObject([{ day: '2031-06-21', imported: true, heatHomeJ: null }]);
    const known = [{ name: imported, status: null, snapshot: null, site: { site: { name: imported } } }];
    expect(await answered(host, 'sites', {})).toMatchObject(known);
    await vi.waitFor(() => expect(events).toContainEqual(expect.objectContaining({ kind: 'live' })), soon);

    const later = open();
    cleanUp.unshift(later.close);
    expect(await answered(later, 'sites', {})).toMatchObject(known);
  });

  test('that the command took in are told beside a log that cannot be read', async () => {
    const { host, folder } = hostBesideLog();
    expect(await answered(host, 'sites', {})).toEqual([]);
    for (const name of ['broken-imported', imported]) mkdirSync(folder.file(name), { recursive: true });
    writeFileSync(logPath(folder.path, 'broken-imported'), 'no log');
    copyFileSync(logPath(folder.path, site.name), logPath(folder.path, imported));
    expect(await answered(host, 'sites', {})).toMatchObject([{ site: { site: { name: site.name } } }]);
  });

  test('of a file that is no such file are refused in words', async () => {
    const { host } = hostBesideLog();
    const file = await upload(host, 'Nothing,here\r\n1,2\r\n');
    const asked = { site: site.name, upload: file, map, clash: 'keep', write: true, job } as const;
    expect(await host.call('importDays', asked)).toMatchObject({
      ok: false,
      problem: { text: expect.stringMatching(/^Nothing was taken: .*no column is called 'Time'.*;.*;.*\.$/) },
    });
    const gone = { ...asked, upload: crypto.randomUUID() };
    expect(await host.call('importDays', gone)).toMatchObject({
      ok: false,
      problem: { text: expect.stringContaining('not here any more') },
    });
    expect(await host.call('importDays', { ...asked, site: 'elsewhere' })).toMatchObject({
      problem: { text: expect.stringContaining("tells of a loop called 'elsewhere'") },
    });
  });

  test('are given up when nobody wants them any more, and nothing is kept', async () => {
    const { host, folder } = hostBesideLog();
    const rows = Array.from({ length: 60_000 }, (_, index) => {
      const time = new Date(Date.UTC(2031, 0, 1) + index * 60_000).toISOString();
      return `${time},40,on`;
    });
    const file = await upload(host, `Time,Roof,Pump\n${rows.join('\n')}\n`);
    const given = host.call('importDays', {
      site: site.name,
      upload: file,
      map,
      clash: 'keep',
      write: true,
      job,
    });
    await vi.waitFor(async () => {
      expect(await answered(host, 'jobProgress', { job })).toMatchObject({ doing: 'importing' });
    }, soon);
    expect(await answered(host, 'cancelJob', { job })).toBe(true);
    expect(await given).toMatchObject({ ok: false, problem: { severity: 'note', text: 'It was given up.' } });
    expect(existsSync(logPath(folder.path, imported))).toBe(false);
  });

  test('keep their maps by name, and tell when the file of maps is broken', async () => {
    const { host, folder } = hostBesideLog();
    expect(await answered(host, 'columnMaps', {})).toEqual([]);
    await answered(host, 'keepColumnMap', { name: 'Old logger', map });
    const kept = await answered(host, 'keepColumnMap', { name: 'Attic', map });
    expect(kept.map(({ name }) => name)).toEqual(['Attic', 'Old logger']);
    expect(await answered(host, 'forgetColumnMap', { name: 'Attic' })).toMatchObject([
      { name: 'Old logger' },
    ]);
    expect(await answered(host, 'columnMaps', {})).toMatchObject([{ map: { time: { format: 'iso' } } }]);
    writeFileSync(folder.file('column-maps.json'), '{"schema":2}');
    expect(await host.call('columnMaps', {})).toMatchObject({
      ok: false,
      problem: { text: expect.stringContaining('holds no maps of columns') },
    });
  });

  test('cannot be taken in by whoever may only look', async () => {
    const { host } = hostBesideLog();
    const api = lookOnlyApi(host);
    const looked = ['columnMaps'];
    for (const method of Object.keys(importMethods) as (keyof typeof importMethods)[]) {
      const reply = await api.call(method, {} as never);
      const refused = !reply.ok && reply.problem.text.includes('look only');
      expect([method, refused]).toEqual([method, !looked.includes(method)]);
    }
  });
});
