import type { Decision, EngineInput, OperatorRequest } from '../../shared-types/engine.ts';
import type { DeviceExchange, RequestMessage } from '../../shared-types/messages.ts';
import type { Site } from '../../shared-types/site.ts';
import type { Clock } from '../clock.ts';
import type { LoopLink } from '../links/link.ts';
import { eventsBetween } from '../log/events.ts';
import type { LocalDays } from '../log/local-day.ts';
import type { LogWriter } from '../log/log.ts';
import type { Engine, EngineState } from './engine.ts';
import { inputOf } from './input.ts';
import { outputSender } from './outputs.ts';
import type { RequestDesk } from './request-desk.ts';
import { refusalByAge, sortRequest } from './requests.ts';
import type { SettingsKeeper } from './settings-keeper.ts';
import { createStateKeeper } from './state-keeper.ts';

/** Where a run of the controller begins. */
export interface RunStart {
  readonly run: number;
  readonly siteRevision: number;
  readonly state: EngineState;
}

export interface StepperOptions {
  readonly site: Site;
  readonly clock: Clock;
  readonly days: LocalDays;
  readonly engine: Engine;
  readonly link: LoopLink;
  readonly log: LogWriter;
  readonly desk: RequestDesk;
  readonly settings: SettingsKeeper;
  readonly start: RunStart;
  readonly onDecision: (decision: Decision, step: number, device: DeviceExchange) => void;
  /** Told once a cause that the engine failed; outputs are safe then. */
  readonly onFailure: (text: string) => void;
}

/** The steps of one run, each: heard, decided, put out, logged, told. */
export interface Stepper {
  step(): void;
  /** Puts the safe outputs out. */
  makeSafe(): void;
  /** Makes safe and saves the state, for a restart to take up. */
  end(): void;
}

interface HeardRequest {
  readonly message: RequestMessage;
  readonly request: OperatorRequest;
}

export function createStepper(options: StepperOptions): Stepper {
  const { site, clock, days, engine, link, log, desk, settings, start } = options;
  const outputs = outputSender(link, site.control.outputExpiryS, clock);
  const keeper = createStateKeeper(log, start.run, engine.engineVersion);
  const startedMs = clock.nowMs();
  const failures = new Set<string>();
  let { state } = start;
  let step = 0;
  let before: Decision | null = null;
  let steppedAtMs: number | null = null;

  const point = () => ({ state, step, atMs: clock.nowMs(), steadyMs: clock.steadyMs() });

  /** Settles requests for new settings, up to the first request for the engine. */
  function hearRequest(): HeardRequest | null {
    for (let message = desk.take(); message !== null; message = desk.take()) {
      const sorted = sortRequest(message, Date.now());
      if (sorted.kind === 'engine') return { message, request: sorted.request };
      const answer =
        refusalByAge(message, sorted.ageMs) ??
        settings.change(message, sorted.operation.settings, clock.nowMs());
      desk.answer(message, answer);
    }
    return null;
  }

  function decide(input: EngineInput): Decision | undefined {
    try {
      const next = engine.step(state, input, site, settings.settings);
      state = next.state;
      return next.decision;
    } catch (thrown) {
      const text = thrown instanceof Error ? thrown.message : String(thrown);
      if (!failures.has(text)) options.onFailure(text);
      failures.add(text);
      return undefined;
    }
  }

  function keep(input: EngineInput, decision: Decision): void {
    const { run, siteRevision } = start;
    const outcome = engine.outcomeOf(decision);
    log.append({ step, run, siteRevision, settingsRevision: settings.revision, input, outcome });
    for (const event of eventsBetween(before, decision, startedMs)) log.event(event);
    before = decision;
  }

  function answer({ message }: HeardRequest, decision: Decision | undefined): void {
    desk.answer(
      message,
      decision?.answer ?? {
        id: message.id,
        accepted: false,
        code: 'not-possible-here',
        text: 'The control logic gave no answer; outputs are safe when it failed.',
      },
    );
  }

  function runStep(): void {
    const steadyMs = Math.round(clock.steadyMs());
    const asked = hearRequest();
    const input = inputOf(
      {
        nowMs: clock.nowMs(),
        elapsedMs: steppedAtMs === null ? null : steadyMs - steppedAtMs,
        readings: link.readings(),
        feedback: link.feedback(),
        request: asked?.request ?? null,
      },
      days,
    );
    keeper.before(point(), input.localDay);
    const decision = decide(input);
    outputs.send(decision?.outputs ?? engine.safeOutputs);
    if (decision !== undefined) {
      step++;
      steppedAtMs = steadyMs;
      keep(input, decision);
      const { readings, feedback } = input;
      options.onDecision(decision, step, { readings, feedback, renewedAgeMs: outputs.renewedAgeMs() });
    }
    if (asked !== null) answer(asked, decision);
  }

  const makeSafe = () => outputs.send(engine.safeOutputs);
  return {
    step: runStep,
    makeSafe,
    end() {
      makeSafe();
      keeper.save(point());
    },
  };
}
