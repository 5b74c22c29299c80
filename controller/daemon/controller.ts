import type { Answer } from '../../shared-types/engine.ts';
import { messageSchemaVersion, type RequestMessage } from '../../shared-types/messages.ts';
import type { Site } from '../../shared-types/site.ts';
import type { Clock } from '../clock.ts';
import { settingsRemarks } from '../engine/index.ts';
import { boundedWait } from '../links/bounded-wait.ts';
import type { RunningBroker } from '../links/broker.ts';
import type { LoopLink } from '../links/link.ts';
import { type BrokerCredentials, openLink } from '../links/open-link.ts';
import { localDaysOf } from '../log/local-day.ts';
import { type LogWriter, logPath } from '../log/log.ts';
import { openLogWriter } from '../log/writer.ts';
import { type Beat, startBeat } from './beat.ts';
import { type BegunRun, beginRun } from './begin-run.ts';
import { engine } from './engine.ts';
import { createNotes, type Notes } from './notes.ts';
import { startOwnBroker } from './own-broker.ts';
import { openPublisher, type Publisher } from './publisher.ts';
import { openRequestDesk } from './request-desk.ts';
import { createSettingsKeeper, type SettingsKeeper } from './settings-keeper.ts';
import { createStepper } from './stepper.ts';

export interface ControllerOptions {
  readonly site: Site;
  readonly dataFolder: string;
  readonly clock: Clock;
  /** For the broker of the monitors, when the site file names one. */
  readonly publishCredentials?: BrokerCredentials;
  /** What device and monitors have to give at the embedded broker; without it anybody is let in. */
  readonly clientCredentials?: BrokerCredentials;
  /** Prints a line for whoever runs this, once a cause. */
  readonly say: (line: string) => void;
}

export interface Controller {
  /** Address of the embedded broker, or null without one. */
  readonly brokerUrl: string | null;
  /** Puts the safe outputs out at once. */
  makeSafe(): void;
  /** Outputs safe, state saved, log and connections closed, in this order. */
  stop(): Promise<void>;
}

/** Wall time that the first connection to the device is waited for before the steps begin [ms]. */
const firstLinkMs = 1000;
/** Wall time that a connection may take to close [ms]. */
const closeMs = 600;

/**
 * Starts everything that controls one loop.
 *
 * @throws BrokerStartError when the embedded broker cannot listen; nothing runs then.
 */
export async function startController(options: ControllerOptions): Promise<Controller> {
  const { site, clock } = options;
  const log = openLogWriter(logPath(options.dataFolder, site.name));
  const notes = createNotes(log, clock, options.say);
  notes.watchLog();
  const broker = await brokerOf(options, notes, log);
  const run = beginRun(log, engine, site, clock.nowMs());
  const link = await openLink({
    site,
    clock,
    ...(broker === undefined
      ? {}
      : { brokerUrl: broker.url, brokerCredentials: broker.controllerCredentials }),
    report: ({ kind, text }) => notes.note(kind, text),
  });
  await boundedWait(link.open(), firstLinkMs);
  return assemble(options, { log, notes, broker, run, link });
}

interface Parts {
  readonly log: LogWriter;
  readonly notes: Notes;
  readonly broker: RunningBroker | undefined;
  readonly run: BegunRun;
  readonly link: LoopLink;
}

/** Starts the embedded broker, if there is one; the log is closed when it cannot start. */
async function brokerOf(options: ControllerOptions, notes: Notes, log: LogWriter) {
  try {
    return await startOwnBroker(options, notes);
  } catch (thrown) {
    log.close();
    throw thrown;
  }
}

function assemble(options: ControllerOptions, parts: Parts): Controller {
  const { site, clock } = options;
  const { log, notes, broker, run, link } = parts;
  let publisher: Publisher | undefined;
  let beat: Beat | undefined;
  let { learnt } = run.state;

  const tellSite = () => publisher?.site(siteMessage(site, run, settings));
  const settings = createSettingsKeeper(
    log,
    { settings: run.settings, revision: run.settingsRevision },
    tellSite,
    (changed) => settingsRemarks(site, changed, learnt),
  );
  const desk = openRequestDesk({
    send: (answer) => publisher?.answer(answer),
    onAnswered: (request, answer) => noteAnswer(notes, request, answer),
    onIgnored: (text) => notes.note('message-ignored', text),
    onWaiting: () => beat?.soon(),
  });
  const stepper = createStepper({
    site,
    clock,
    days: localDaysOf(site.timeZone),
    engine,
    link,
    log,
    desk,
    settings,
    start: run,
    onFailure: (text) =>
      notes.note('alarm-raised', `The control logic failed, outputs are safe: ${text}`, {
        alarm: 'internal-error',
        priority: 'urgent',
      }),
    onDecision(decision, sequence, device) {
      learnt = decision.learnt;
      notes.watchLog();
      publisher?.snapshot({
        schema: messageSchemaVersion,
        site: site.name,
        sequence,
        run: run.run,
        clockSpeed: clock.speed,
        simulatedClock: clock.simulated,
        settingsRevision: settings.revision,
        link: link.health(),
        device,
        log: { writable: log.writable, remark: log.remark },
        engineVersion: engine.engineVersion,
        decision,
      });
    },
  });
  publisher = publisherOf(options, broker, notes, desk.hear);
  tellSite();
  beat = startBeat({
    clock,
    stepMs: site.control.stepS * 1000,
    newestAgeMs: () => Math.min(...Object.values(link.readings()).map(({ ageMs }) => ageMs)),
    beat: stepper.step,
  });
  return {
    brokerUrl: broker?.url ?? null,
    makeSafe: stepper.makeSafe,
    async stop() {
      beat?.stop();
      stepper.end();
      notes.note('controller-stopped', 'The controller was stopped; outputs are safe.');
      log.close();
      await boundedWait(Promise.all([link.close(), publisher?.close()]), 2 * closeMs);
      await boundedWait(Promise.resolve(broker?.close()), closeMs);
    },
  };
}

function siteMessage(site: Site, { siteRevision }: BegunRun, { settings, revision }: SettingsKeeper) {
  return { schema: messageSchemaVersion, site, siteRevision, settings, settingsRevision: revision } as const;
}

function noteAnswer(notes: Notes, { id, who, operation }: RequestMessage, answer: Answer): void {
  const word = answer.accepted ? 'accepted' : 'refused';
  notes.note('request-answered', `${who} asked for ${operation.kind}: ${word}. ${answer.text}`, {
    id,
    who,
    operation: operation.kind,
    accepted: answer.accepted,
    code: answer.code,
  });
}

function publisherOf(
  { site, publishCredentials }: ControllerOptions,
  broker: RunningBroker | undefined,
  notes: Notes,
  onRequest: (payload: Uint8Array, retained: boolean) => void,
): Publisher | undefined {
  const url = site.publish?.url ?? broker?.url;
  if (site.publish === undefined || url === undefined) return undefined;
  const credentials = site.publish.url === undefined ? broker?.controllerCredentials : publishCredentials;
  return openPublisher({
    url,
    ...(credentials === undefined ? {} : { credentials }),
    siteName: site.name,
    onRequest,
    onLost: (text) => notes.note('link-lost', `Monitors cannot be reached: ${text}`, { broker: url }),
    onBack: () => notes.note('link-back', 'Monitors can be reached again.', { broker: url }),
  });
}
