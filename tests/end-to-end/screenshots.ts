import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { readSiteFile } from '../../controller/site-file.ts';
import { demoSiteFile, plantStatePath } from '../../desktop/start/places.ts';
import { en } from '../../desktop/ui/text/en.ts';
import { keepPlant } from '../../sim/device/plant-state-file.ts';
import { recordHistory } from '../../sim/history.ts';
import { launchBrowser } from '../support/browser.ts';
import { startNode } from '../support/process.ts';
import { temporaryFolder } from '../support/temporary.ts';
import { sleep } from '../support/wait.ts';

/** Takes the README's pictures anew, from the demo as it starts for everyone: all, or those that are named. */
const named = process.argv.slice(2);
const folder = fileURLToPath(new URL('../../desktop/pictures/', import.meta.url));
const desk = { width: 1280, height: 900 };
const phone = { width: 390, height: 844 };

interface Picture {
  readonly name: string;
  readonly hash: string;
  readonly scheme: 'light' | 'dark';
  readonly size: typeof desk;
  /** Taken of a loop with a fault instead of the demo, or of the demo with three weeks behind it. */
  readonly of?: 'fault' | 'weeks';
  /** Brings the screen to what the picture is to show. */
  readonly prepare?: (page: Page) => Promise<void>;
}

const atWork = (page: Page) =>
  page.getByRole('region', { name: en.phases.circulating, exact: true }).waitFor({ timeout: 240_000 });
const replayed = async (page: Page) => {
  await page.getByRole('button', { name: en.replay.run }).click();
  await page.getByText('The same decisions').waitFor();
  await sleep(1000);
};

const livedAgain = async (page: Page) => {
  // On a busy machine the first days are still being recorded.
  await page.locator('option[value="2031-06-20"]').waitFor({ state: 'attached', timeout: 240_000 });
  await page.getByRole('textbox', { name: 'Start difference', exact: true }).fill('4');
  await page.getByRole('button', { name: en.tuning.other.run }).click();
  await page.getByRole('button', { name: en.tuning.other.table }).waitFor({ timeout: 240_000 });
  // Past the form, down to the answer.
  await page.mouse.wheel(0, 670);
  await sleep(1000);
};

const checked = async (page: Page) => {
  await page.getByRole('button', { name: en.panCheck.form.run, exact: true }).click();
  await page.getByText(en.panCheck.byDay.heading).waitFor({ timeout: 240_000 });
  // Past the form, down to the answer.
  await page.mouse.wheel(0, 300);
  await sleep(1000);
};

const alarmed = (page: Page) =>
  page.getByText(en.alarmStates.unacknowledged).first().waitFor({ timeout: 240_000 });

/** The newest whole day of the demo. */
const otherSetpoints = '#/replay/2031-06-20/other';

const pictures: readonly Picture[] = [
  { name: 'live-light', hash: '#/live', scheme: 'light', size: desk, prepare: atWork },
  { name: 'live-dark', hash: '#/live', scheme: 'dark', size: desk, prepare: atWork },
  { name: 'live-phone', hash: '#/live', scheme: 'light', size: phone, prepare: atWork },
  { name: 'days-light', hash: '#/days', scheme: 'light', size: desk },
  { name: 'setpoints-light', hash: '#/setpoints', scheme: 'light', size: desk },
  { name: 'alarms-light', hash: '#/alarms', scheme: 'light', size: desk, of: 'fault', prepare: alarmed },
  { name: 'site-light', hash: '#/site', scheme: 'light', size: desk },
  { name: 'replay-light', hash: '#/replay', scheme: 'light', size: desk, prepare: replayed },
  {
    name: 'pan-check-light',
    hash: '#/pan-check',
    scheme: 'light',
    size: desk,
    of: 'weeks',
    prepare: checked,
  },
  { name: 'other-light', hash: otherSetpoints, scheme: 'light', size: desk, prepare: livedAgain },
];

async function take(browser: Browser, url: string, picture: Picture): Promise<void> {
  const context = await browser.newContext({ colorScheme: picture.scheme, viewport: picture.size });
  const page = await context.newPage();
  await page.goto(`${url}${picture.hash}`);
  await page.waitForSelector('main');
  await sleep(4000);
  await picture.prepare?.(page);
  await page.screenshot({ path: `${folder}${picture.name}.png` });
  await context.close();
}

const isWanted = ({ name }: Picture) => named.length === 0 || named.includes(name);

/** Starts a demo, takes the pictures of it and ends it. */
async function takeAll(of: readonly Picture[], from: string, ...more: readonly string[]): Promise<void> {
  if (of.length === 0) return;
  const data = temporaryFolder('pictures');
  if (of.some((picture) => picture.of === 'weeks')) recordWeeks(data.path, Date.parse(from));
  const demo = startNode('desktop/start.ts', [
    '--no-window',
    ...['--port', '0', '--speed', '60', '--data', data.path, '--from', from, ...more],
  ]);
  try {
    const url = (await demo.line(/^monitor: (\S+)/))[1] ?? '';
    const browser = await launchBrowser();
    await sleep(20_000);
    for (const picture of of) await take(browser, url, picture);
    await browser.close();
  } finally {
    await demo.stop('SIGINT');
    data.remove();
  }
}

/** Three weeks of the demo's loop, where its start finds them in place of the few days that it records itself. */
function recordWeeks(dataFolder: string, untilMs: number): void {
  const read = readSiteFile(demoSiteFile);
  if (!read.ok) throw new Error('the demo has no site');
  const { site } = read;
  // The start may not lie before the end of the log.
  const toMs = untilMs - 60_000;
  const fromMs = toMs - 21 * 86_400_000;
  const { plantState } = recordHistory({ site, dataFolder, fromMs, toMs, seed: 1 });
  keepPlant(plantStatePath(dataFolder, site.name), plantState);
}

mkdirSync(folder, { recursive: true });
const wanted = pictures.filter(isWanted);
const wantedOf = (of: Picture['of']) => wanted.filter((picture) => picture.of === of);
// A clear late morning: the pan is full and the pump at work after some minutes of the demo's clock.
await takeAll(wantedOf(undefined), '2031-06-21T13:30:00Z');
await takeAll(wantedOf('weeks'), '2031-06-21T13:30:00Z');
// The relay of the pump welds shut while the pump is at work; as the sun sinks, the pump runs against its order.
const scenarios = temporaryFolder('scenario');
const days = fileURLToPath(new URL('../../sim/scenarios/', import.meta.url));
const welded = readFileSync(`${days}days/welded-relay.yaml`, 'utf8');
writeFileSync(
  scenarios.file('welded.yaml'),
  welded.replace('"11:00"', '"19:50"').replace('../quillhaven', `${days}quillhaven`),
);
try {
  await takeAll(wantedOf('fault'), '2031-06-21T19:30:00Z', ...['--scenario', scenarios.file('welded.yaml')]);
} finally {
  scenarios.remove();
}
console.log(`${wanted.length} pictures in desktop/pictures`);
