import { type BegunRun, beginRun } from '../../../../controller/daemon/begin-run.ts';
import type { Engine } from '../../../../controller/daemon/engine.ts';
import { openRequestDesk, type RequestDesk } from '../../../../controller/daemon/request-desk.ts';
import { createSettingsKeeper } from '../../../../controller/daemon/settings-keeper.ts';
import { createStepper, type Stepper } from '../../../../controller/daemon/stepper.ts';
import { localDaysOf } from '../../../../controller/log/local-day.ts';
import type { LogWriter } from '../../../../controller/log/log.ts';
import { openLogWriter } from '../../../../controller/log/writer.ts';
import type { Answer, Decision } from '../../../../shared-types/engine.ts';
import type { DeviceExchange, RequestedOperation } from '../../../../shared-types/messages.ts';
import { fakeEngine } from '../../../support/fake-engine.ts';
import { type FakeLink, fakeLink } from '../../../support/fake-link.ts';
import { type ManualClock, manualClock } from '../../../support/manual-clock.ts';
import { demoContent, siteOf } from '../../../support/sites.ts';

export interface StepperRig {
  readonly stepper: Stepper;
  readonly clock: ManualClock;
  readonly link: FakeLink;
  readonly log: LogWriter;
  readonly run: BegunRun;
  readonly decisions: Decision[];
  /** What was exchanged with the device at each of them. */
  readonly exchanges: DeviceExchange[];
  readonly answers: Answer[];
  readonly failures: string[];
  /** Steps `count` times, five seconds apart. */
  steps(count: number): void;
  ask(operation: RequestedOperation, ageMs?: number): void;
}

/** A stepper on a log at `path`, with a fake engine and a fake link unless told otherwise. */
export function stepperRig(
  path: string,
  { engine = fakeEngine(), clock = manualClock() }: { engine?: Engine; clock?: ManualClock } = {},
): StepperRig {
  const site = siteOf(demoContent());
  const log = openLogWriter(path);
  const run = beginRun(log, engine, site, clock.nowMs());
  const link = fakeLink();
  const exchanges: DeviceExchange[] = [];
  const [decisions, answers, failures]: [Decision[], Answer[], string[]] = [[], [], []];
  const desk: RequestDesk = openRequestDesk({
    send: (answer) => answers.push(answer),
    onAnswered: () => undefined,
    onIgnored: () => undefined,
    onWaiting: () => undefined,
  });
  const settings = createSettingsKeeper(
    log,
    { settings: run.settings, revision: run.settingsRevision },
    () => undefined,
  );
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
    onDecision(decision, _step, device) {
      decisions.push(decision);
      exchanges.push(device);
    },
    onFailure: (text) => failures.push(text),
  });
  let asked = 0;
  return {
    stepper,
    clock,
    link,
    log,
    run,
    decisions,
    exchanges,
    answers,
    failures,
    steps(count) {
      for (let step = 0; step < count; step++) {
        stepper.step();
        clock.advance(5000);
      }
    },
    ask(operation, ageMs = 0) {
      const id = `request-${++asked}`;
      const message = {
        schema: 1,
        id,
        issuedAtMs: Date.now() - ageMs,
        lifeMs: 5000,
        who: 'a test',
        operation,
      };
      desk.hear(Buffer.from(JSON.stringify(message)), false);
    },
  };
}
