import { existsSync } from 'node:fs';
import { logPath } from '../../controller/log/log.ts';
import { openLogReader } from '../../controller/log/reader.ts';
import type { MonitorApi } from '../../shared-types/monitor-api.ts';
import { openMonitorWindow } from '../electron/window.ts';
import { createHost, type HostOptions } from '../host/host.ts';
import { wordsOf } from '../host/replies.ts';
import { pageFolder } from '../web/run.ts';
import { serveMonitor } from '../web/server.ts';
import { chooseAnchor, comingUpMs } from './calendar.ts';
import { dataFolderFault } from './data-folder.ts';
import { deferredApi } from './deferred-api.ts';
import { buildMissingPage, recordFirstDays } from './errands.ts';
import { type LoopStart, startLoop } from './loop.ts';
import type { StartOptions } from './options.ts';
import { createParts, type Parts } from './parts.ts';
import { type Play, readPlay } from './play.ts';

/** The whole job on one machine: simulated loop, controller, monitor. */
export interface House {
  /** Starts everything. @returns why it could not, or which part ended by itself, in words. */
  run(): Promise<string>;
  stop(): Promise<void>;
}

/** Wall time in which everything has to stop [ms]. */
const stopDeadlineMs = 2500;
/** Age of this process at which the page's address is told even if the controller is not up yet [ms]. */
const tellAtMs = 8000;

export function createHouse(options: StartOptions): House {
  const parts = createParts(stopDeadlineMs);
  const graceMs = comingUpMs(performance.now());
  return {
    run: () => run(options, parts, graceMs).catch(wordsOf),
    stop: parts.stop,
  };
}

async function run(options: StartOptions, parts: Parts, graceMs: number): Promise<string> {
  const read = readPlay(options);
  if (!read.ok) return read.reason;
  const { play } = read;
  const fault = dataFolderFault(play.dataFolder) ?? (await buildMissingPage(parts));
  if (fault !== undefined) return fault;
  const coming = Promise.withResolvers<MonitorApi>();
  const api = deferredApi(coming.promise);
  const web = await serveMonitor({ api, pageFolder, host: '127.0.0.1', port: options.port });
  if (!web.ok) return web.reason;
  const { url } = web.server;
  parts.begin(() => ({ stop: web.server.close }));
  const tell = tellOnce(url);
  // A page that had to be built first took longer than that.
  setTimeout(tell, Math.max(0, tellAtMs - performance.now())).unref();

  const begun = await beginLoop(options, play, parts, graceMs);
  if (!begun.ok) return begun.reason;
  const { username, passwordFile } = play.site.broker ?? {};
  const { brokerUrl } = begun.loop;
  const monitor: HostOptions = { brokerUrl, username, passwordFile, dataFolder: play.dataFolder };
  const host = createHost(monitor);
  parts.begin(() => ({ stop: host.close }));
  coming.resolve(host);
  tell();
  if (options.window) await openWindow(parts, monitor, url);
  return begun.loop.ended;
}

/** Records the first days where there are none, then starts controller and device where the log ends. */
async function beginLoop(
  options: StartOptions,
  play: Play,
  parts: Parts,
  graceMs: number,
): Promise<LoopStart> {
  const { site, dataFolder, firstMs } = play;
  const log = logPath(dataFolder, site.name);
  const stepMs = site.control.stepS * 1000;
  if (play.recordsDays && !existsSync(log)) {
    // The calendar goes on one step after the last one recorded.
    const fault = await recordFirstDays(parts, dataFolder, firstMs - stepMs);
    if (fault !== undefined) return { ok: false, reason: fault };
  }
  const choice = chooseAnchor({
    newestMs: existsSync(log) ? newestOf(log) : null,
    fromMs: options.from,
    firstMs,
    stepMs,
    // The calendar stands until controller and device have both come up.
    wallMs: Date.now() + graceMs,
    speed: options.speed,
  });
  return choice.ok ? startLoop(parts, play, choice.anchor) : choice;
}

function newestOf(log: string): number | null {
  const reader = openLogReader(log);
  try {
    return reader.newestMs();
  } finally {
    reader.close();
  }
}

async function openWindow(parts: Parts, monitor: HostOptions, url: string): Promise<void> {
  const start = await openMonitorWindow(monitor);
  if (!start.ok) {
    console.log(`No window here: ${start.reason}. Open the address in a browser.`);
    return;
  }
  const { window } = start;
  let stopping = false;
  window.on('exit', () => {
    if (!stopping)
      console.log(`The window is closed. The monitor goes on at ${url}; Ctrl-C stops everything.`);
  });
  parts.begin(() => ({
    async stop() {
      stopping = true;
      window.kill();
    },
  }));
}

/** Tells the page's address, the first time that it is called. */
function tellOnce(url: string): () => void {
  let told = false;
  return () => {
    if (!told) console.log(`monitor: ${url}`);
    told = true;
  };
}
