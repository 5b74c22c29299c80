import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it, vi } from 'vitest';
import { alarmNews } from '../../../desktop/electron/alarm-news.ts';
import { autostartFile, setAutostart, startsAtLogin } from '../../../desktop/electron/autostart.ts';
import { createDesk } from '../../../desktop/electron/desk.ts';
import { openSaveDoor } from '../../../desktop/electron/save.ts';
import { iconBitmap, iconPixels } from '../../../desktop/electron/tray-icon.ts';
import { trayText } from '../../../desktop/electron/tray-text.ts';
import { placeOn, readPlace, writePlace } from '../../../desktop/electron/window-place.ts';
import type { Alarm, AlarmCode } from '../../../shared-types/alarms.ts';
import type { SiteLive } from '../../../shared-types/monitor-api.ts';
import { testLive, testSnapshot } from '../../support/fake-monitor/snapshot.ts';
import { temporaryFolder } from '../../support/temporary.ts';

const folder = temporaryFolder('desk');
afterAll(() => folder.remove());

const alarm = (code: AlarmCode, change: Partial<Alarm> = {}): Alarm => ({
  code,
  priority: 'urgent',
  state: 'unacknowledged',
  active: true,
  sinceMs: 1,
  values: {},
  text: 'It is so.',
  ...change,
});
const loop = (alarms: Alarm[] = [], change: Partial<SiteLive> = {}): SiteLive =>
  testLive({ snapshot: testSnapshot({ alarms }), ...change });
const host = { brokerConnected: true, brokerUrl: 'mqtt://127.0.0.1', problems: [] };

describe('the text beside the clock', () => {
  it.each([
    ['nothing heard', undefined, [], 'No controller was heard yet'],
    ['a loop at work', host, [loop()], 'Test loop: Circulating'],
    ['an alarm', host, [loop([alarm('frost-danger')])], 'Test loop: Circulating, 1 alarm'],
    [
      'a shelved alarm',
      host,
      [loop([alarm('frost-danger', { state: 'shelved' })])],
      'Test loop: Circulating',
    ],
    ['no values', host, [loop([], { snapshot: null })], 'Test loop: no values yet'],
    ['no site file', host, [loop([], { site: null, snapshot: null })], 'test-loop: no values yet'],
    [
      'a controller gone',
      host,
      [loop([], { status: { schema: 1, state: 'lost' } })],
      'Test loop: the controller is gone',
    ],
    [
      'a controller stopped',
      host,
      [loop([], { status: { schema: 1, state: 'stopped' } })],
      'Test loop: the controller was stopped',
    ],
    ['no broker', { ...host, brokerConnected: false }, [loop()], 'No connection to the broker'],
  ] as const)('with %s', (_what, of, sites, text) => {
    expect(trayText(of, sites)).toBe(text);
  });

  it('names three sites and counts the others, within what the place holds', () => {
    const named = (name: string) => loop([], { name, site: null, snapshot: null });
    expect(trayText(host, ['a', 'b', 'c'].map(named)).split('\n')).toHaveLength(3);
    expect(trayText(host, ['a', 'b', 'c', 'd', 'e'].map(named)).split('\n').at(-1)).toBe('and 2 more');
    expect(trayText(host, [named('x'.repeat(200))])).toHaveLength(127);
  });

  it('is shown once for each change, the sites in the order of their names', () => {
    const show = vi.fn();
    const hear = createDesk({ show, notify: vi.fn() });
    const named = (name: string) => loop([], { name, site: null, snapshot: null });
    hear({ kind: 'live', live: named('b') });
    hear({ kind: 'live', live: named('b') });
    hear({ kind: 'live', live: named('a') });
    hear({ kind: 'gone', site: 'b' });
    hear({ kind: 'host', host: { ...host, brokerConnected: false } });
    expect(show.mock.calls.flat()).toEqual([
      'b: no values yet',
      'a: no values yet\nb: no values yet',
      'a: no values yet',
      'No connection to the broker',
    ]);
  });
});

describe('news of alarms', () => {
  const frost = alarm('frost-danger');
  it('tells each new alarm with its site and what to do', () => {
    const [news, ...others] = alarmNews(loop(), loop([frost]));
    expect(others).toEqual([]);
    expect(news?.title).toBe('Frost, and water in the pan');
    expect(news?.body).toMatch(/^Test loop\. ./);
  });

  it.each([
    ['a site first heard of', undefined, loop([frost])],
    ['an alarm that stood before', loop([frost]), loop([frost])],
    ['an alarm that was seen', loop(), loop([alarm('frost-danger', { state: 'acknowledged' })])],
    ['an alarm that went', loop([frost]), loop()],
    ['values that went', loop([frost]), loop([], { snapshot: null })],
  ])('tells nothing of %s', (_what, before, after) => {
    expect(alarmNews(before, after)).toEqual([]);
  });

  it('tells many at a time together', () => {
    const codes: AlarmCode[] = ['frost-danger', 'sensor-failed', 'pan-sensors-failed', 'dry-running'];
    const some = codes.slice(0, 3).map((code) => alarm(code));
    expect(alarmNews(loop(), loop(some))).toHaveLength(3);
    const all = alarmNews(loop(), loop(codes.map((code) => alarm(code))));
    expect(all).toEqual([
      { title: '4 new alarms', body: expect.stringContaining('Test loop. Frost, and water in the pan, ') },
    ]);
  });
});

describe('the place of the window', () => {
  const area = { x: 0, y: 0, width: 1000, height: 700 };
  const beside = { x: 1000, y: 100, width: 800, height: 600 };
  const at = (x: number, y: number, width = 600, height = 400) => ({ x, y, width, height });

  it.each([
    ['in the middle', at(100, 100), at(100, 100)],
    ['with just enough to get hold of at the right', at(880, 0), at(880, 0)],
    ['with too little at the right', at(881, 0), undefined],
    ['with just enough at the left', at(-480, 0), at(-480, 0)],
    ['with too little at the left', at(-481, 0), undefined],
    ['its top at the lower edge', at(0, 668), at(0, 668)],
    ['its top below the lower edge', at(0, 669), undefined],
    ['its top above the display', at(0, -1), undefined],
    ['larger than the display', at(0, 0, 1200, 900), at(0, 0, 1000, 700)],
  ])('%s', (_what, bounds, placed) => {
    expect(placeOn([area], bounds)).toEqual(placed);
  });

  it('may be on another display, as long as that is there', () => {
    expect(placeOn([area, beside], at(1100, 150))).toEqual(at(1100, 150));
    expect(placeOn([area, beside], at(1100, 99))).toBeUndefined();
    expect(placeOn([], at(0, 0))).toBeUndefined();
  });

  it('is kept in a file; what cannot be read is no place', () => {
    const path = folder.file('place.json');
    expect(readPlace(path)).toBeUndefined();
    const place = { bounds: at(1, 2), maximized: true };
    writePlace(path, place);
    expect(readPlace(path)).toEqual(place);
    for (const text of ['{', '{}', '{"bounds":{"x":"1"},"maximized":true}', 'null']) {
      writeFileSync(path, text);
      expect(readPlace(path)).toBeUndefined();
    }
  });

  it('is not kept where nothing can be written, and that is all', () => {
    const told = vi.spyOn(console, 'error').mockReturnValue();
    writePlace(join(folder.path, 'nowhere', 'place.json'), { bounds: at(0, 0), maximized: false });
    expect(told).toHaveBeenCalledOnce();
    told.mockRestore();
  });
});

describe('starting at login', () => {
  it('is a file that can be taken away again', () => {
    const file = autostartFile(folder.file('config'));
    expect(file).toBe(folder.file('config/autostart/flatwater-monitor.desktop'));
    expect(startsAtLogin(file)).toBe(false);
    setAutostart(file, ['a-program', '--data', 'a b'], true);
    expect(startsAtLogin(file)).toBe(true);
    expect(readFileSync(file, 'utf8')).toContain('\nExec="a-program" "--data" "a b"\n');
    setAutostart(file, [], false);
    expect(startsAtLogin(file)).toBe(false);
    setAutostart(file, [], false);
  });

  it('keeps strange signs in the argument that they belong to', () => {
    const file = folder.file('strange.desktop');
    setAutostart(file, ['a"b', 'c`d', 'e$f', 'g\\h', '50%', 'i\nExec=evil'], true);
    const exec = readFileSync(file, 'utf8').split('\n')[3];
    expect(exec).toBe(String.raw`Exec="a\\"b" "c\\${'`'}d" "e\\$f" "g\\\\h" "50%%" "i\nExec=evil"`);
  });
});

describe('saving', () => {
  const handlers = new Map<string, (event: unknown, raw: unknown) => Promise<unknown>>();
  const dialog = { showSaveDialog: vi.fn() };
  openSaveDoor(
    { handle: (channel: string, handler: never) => handlers.set(channel, handler) } as never,
    dialog as never,
  );
  const page = { url: 'app://flatwater/index.html' };
  const save = (raw: unknown, frame: unknown = page) =>
    handlers.get('monitor-save')?.({ senderFrame: frame, sender: { mainFrame: frame } }, raw);

  it('asks where, proposing the name, and writes the text there', async () => {
    const filePath = folder.file('saved.csv');
    dialog.showSaveDialog.mockResolvedValueOnce({ canceled: false, filePath });
    expect(await save({ name: 'loop-2031-06-21.csv', text: 'a,b\r\n' })).toEqual({ kind: 'saved' });
    expect(dialog.showSaveDialog).toHaveBeenCalledWith({ defaultPath: 'loop-2031-06-21.csv' });
    expect(readFileSync(filePath, 'utf8')).toBe('a,b\r\n');
  });

  it('leaves it where a person changes their mind', async () => {
    dialog.showSaveDialog.mockResolvedValueOnce({ canceled: true, filePath: '' });
    expect(await save({ name: 'a.csv', text: 'a' })).toEqual({ kind: 'dropped' });
  });

  it('says why it could not', async () => {
    mkdirSync(folder.file('a-folder'));
    dialog.showSaveDialog.mockResolvedValueOnce({ canceled: false, filePath: folder.file('a-folder') });
    expect(await save({ name: 'a.csv', text: 'a' })).toEqual({
      kind: 'failed',
      text: expect.stringMatching(/^The file could not be saved: .*EISDIR/),
    });
  });

  it.each([
    ['another page', { name: 'a.csv', text: 'a' }, { url: 'https://example.org/' }],
    ['a folder', { name: '../a.csv', text: 'a' }, page],
    ['a hidden file', { name: '.profile', text: 'a' }, page],
    ['no text', { name: 'a.csv', text: 7 }, page],
    ['no name', { name: '', text: 'a' }, page],
  ])('asks nobody for %s', async (_what, raw, frame) => {
    dialog.showSaveDialog.mockClear();
    expect(await save(raw, frame)).toMatchObject({ kind: 'failed' });
    expect(dialog.showSaveDialog).not.toHaveBeenCalled();
  });
});

it('the mark beside the clock has two lines of water on its ground', () => {
  const bitmap = iconBitmap();
  expect(bitmap).toHaveLength(iconPixels * iconPixels * 4);
  const pixel = (row: number, column: number) =>
    bitmap
      .subarray((row * iconPixels + column) * 4)
      .readUInt32LE()
      .toString(16);
  expect(pixel(0, 0)).toBe('ff1f4e79');
  expect([13, 19].map((row) => pixel(row, 16))).toEqual(['ffffffff', 'ffffffff']);
  expect([pixel(16, 16), pixel(13, 5), pixel(13, 26)]).toEqual(Array(3).fill('ff1f4e79'));
});
