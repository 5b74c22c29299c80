import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type Browser, chromium } from 'playwright-core';
import { findProgram } from './find-program.ts';

/** The browser may talk to this machine alone: nothing that it starts by itself is wanted. */
const flags = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/**
 * A Chromium for tests: the one that CHROME_PATH names, else the system's, else the packaged one,
 * which unpacks itself into the project's .tmp folder.
 */
export async function launchBrowser(): Promise<Browser> {
  return chromium.launch({ executablePath: await browserPath(), args: flags });
}

async function browserPath(): Promise<string> {
  const named = process.env['CHROME_PATH'];
  if (named !== undefined && named !== '') return named;
  const installed = findProgram('chromium') ?? findProgram('google-chrome');
  return installed ?? (await packagedPath());
}

/** The package unpacks into TMPDIR and trusts whatever lies there already: hence a folder of our own. */
async function packagedPath(): Promise<string> {
  const folder = fileURLToPath(new URL('../../.tmp/browser', import.meta.url));
  if (!existsSync(folder)) mkdirSync(folder, { recursive: true });
  const before = process.env['TMPDIR'];
  process.env['TMPDIR'] = folder;
  // With this set it brings the system libraries that a bare machine lacks.
  process.env['AWS_LAMBDA_JS_RUNTIME'] ??= 'nodejs22.x';
  process.env['FONTCONFIG_FILE'] = fontList(folder);
  try {
    const { default: packaged } = await import('@sparticuz/chromium');
    return await packaged.executablePath();
  } finally {
    if (before === undefined) delete process.env['TMPDIR'];
    else process.env['TMPDIR'] = before;
  }
}

/**
 * A list of fonts for the packaged Chromium. Its own names the system's temporary folder, whatever
 * TMPDIR says; and without any font no text has a size.
 */
function fontList(folder: string): string {
  const path = `${folder}/fonts.conf`;
  const folders = [`${folder}/fonts`, '/usr/share/fonts'].map((one) => `<dir>${one}</dir>`);
  const cache = `<cachedir>${folder}/fonts-cache</cachedir>`;
  writeFileSync(path, `<?xml version="1.0"?><fontconfig>${folders.join('')}${cache}</fontconfig>`);
  return path;
}
