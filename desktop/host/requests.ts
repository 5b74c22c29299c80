import { randomUUID } from 'node:crypto';
import { hostname } from 'node:os';
import type { Answer } from '../../shared-types/engine.ts';
import {
  messageSchemaVersion,
  type RequestedOperation,
  type RequestMessage,
} from '../../shared-types/messages.ts';
import type { MonitorReply } from '../../shared-types/monitor-api.ts';
import { refusal } from './replies.ts';

type Reply = MonitorReply<'request'>;

/** Requests on their way, each until its answer or its end. */
export interface Requests {
  ask(site: string, operation: RequestedOperation): Promise<Reply>;
  hear(site: string, answer: Answer): void;
  /** Ends every request that still waits. */
  close(): void;
}

interface RequestsOptions {
  /** Hands a request to the broker. */
  readonly publish: (site: string, message: RequestMessage) => void;
  /** How long an answer is waited for; the request's life as well, so that none is obeyed later [ms]. */
  readonly timeoutMs: number;
}

const who = `monitor on ${hostname()}`.slice(0, 80);

export function createRequests({ publish, timeoutMs }: RequestsOptions): Requests {
  const waiting = new Map<string, { site: string; settle: (reply: Reply) => void }>();

  return {
    ask(site, operation) {
      const { promise, resolve } = Promise.withResolvers<Reply>();
      const id = randomUUID();
      const timer = setTimeout(() => settle(unanswered(timeoutMs)), timeoutMs);
      const settle = (reply: Reply) => {
        clearTimeout(timer);
        if (waiting.delete(id)) resolve(reply);
      };
      waiting.set(id, { site, settle });
      publish(site, {
        schema: messageSchemaVersion,
        id,
        issuedAtMs: Date.now(),
        lifeMs: timeoutMs,
        who,
        operation,
      });
      return promise;
    },
    hear(site, answer) {
      const entry = waiting.get(answer.id);
      // An answer on another site's topic is not the one that was asked for.
      if (entry?.site === site) entry.settle({ ok: true, result: answer });
    },
    close() {
      for (const { settle } of waiting.values())
        settle(refusal('warning', 'The monitor closed before the controller answered.'));
    },
  };
}

function unanswered(timeoutMs: number): Reply {
  return refusal(
    'error',
    `The controller did not answer within ${timeoutMs / 1000} s.`,
    'The request has expired by now: a controller that hears it later refuses it. Look at the live values for what it did.',
  );
}
