import { readdirSync, readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { build } from 'vite';
import { launchBrowser } from '../support/browser.ts';
import { buildPage } from '../support/built-page.ts';
import { median, report } from './figure.ts';

const rounds = 15;

/** What the page of the bench tells: times of each way to draw [ms]. */
type Taken = Readonly<Record<'ours' | 'plainOfAll' | 'plainOfSame', readonly number[]>>;

/** What drawing a day costs over the chart library alone, and how much a browser has to fetch. */
export async function benchDrawing(): Promise<void> {
  const browser = await launchBrowser();
  try {
    const page = await (await browser.newContext()).newPage();
    await page.addScriptTag({ content: await drawingScript() });
    const { ours, plainOfAll, plainOfSame } = await page.evaluate<Taken>(`draw(${rounds})`);
    const over = (others: readonly number[]) => median(ours) / median(others);
    const ratio = { bench: 'drawing', unit: '1' } as const;
    report({
      ...ratio,
      figure: 'a day of 8 series at 10 s over the chart library alone',
      value: over(plainOfAll),
      atMost: 1.3,
    });
    report({ ...ratio, figure: 'the same, with the same thinned points for both', value: over(plainOfSame) });
    report({ bench: 'drawing', figure: 'that day', value: median(ours), unit: 'ms' });
  } finally {
    await browser.close();
  }
  report({
    bench: 'drawing',
    figure: 'scripts and styles of all screens, compressed',
    value: await compressedKb(),
    unit: 'kB',
    atMost: 400,
  });
}

async function drawingScript(): Promise<string> {
  const built = await build({
    configFile: false,
    logLevel: 'error',
    build: {
      write: false,
      lib: { entry: 'tests/bench/drawing/page.ts', formats: ['iife'], name: 'drawing' },
    },
  });
  const [whole] = Array.isArray(built) ? built : [];
  const code = whole?.output[0]?.code;
  if (code === undefined) throw new Error('the page of the bench was not built');
  return code;
}

async function compressedKb(): Promise<number> {
  const page = await buildPage();
  try {
    const assets = readdirSync(`${page.path}/assets`).filter((name) => /\.(js|css)$/.test(name));
    const bytes = assets.map((name) => gzipSync(readFileSync(`${page.path}/assets/${name}`)).length);
    return bytes.reduce((sum, one) => sum + one, 0) / 1000;
  } finally {
    page.remove();
  }
}
