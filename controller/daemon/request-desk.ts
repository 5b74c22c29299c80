import { type Answer, requestIdSchema } from '../../shared-types/engine.ts';
import { type RequestMessage, requestMessageSchema } from '../../shared-types/messages.ts';

/** Requests as they come in, checked, once each, in order. */
export interface RequestDesk {
  hear(payload: Uint8Array, retained: boolean): void;
  /** The request that has waited longest, or null. */
  take(): RequestMessage | null;
  /** Gives the answer to one that was taken. */
  answer(request: RequestMessage, answer: Answer): void;
}

export interface RequestDeskOptions {
  /** Sends an answer to whoever asked. */
  readonly send: (answer: Answer) => void;
  readonly onAnswered: (request: RequestMessage, answer: Answer) => void;
  /** Told once a cause. */
  readonly onIgnored: (text: string) => void;
  /** Told when a request waits. */
  readonly onWaiting: () => void;
}

/** A request is a few hundred bytes; what is much longer is something else. */
const mostBytes = 16 * 1024;
const mostWaiting = 16;
const mostRemembered = 1000;
const mostCauses = 100;

export function openRequestDesk(options: RequestDeskOptions): RequestDesk {
  const queue: RequestMessage[] = [];
  /** Every id that was heard; undefined while its answer is to come. */
  const heard = new Map<string, Answer | undefined>();
  const causes = new Set<string>();

  function ignore(cause: string): void {
    if (causes.has(cause) || causes.size >= mostCauses) return;
    causes.add(cause);
    options.onIgnored(cause);
  }

  function refuse(id: string | undefined, code: Answer['code'], text: string): void {
    ignore(text);
    if (id !== undefined) options.send({ id, accepted: false, code, text });
  }

  function accept(request: RequestMessage): void {
    if (heard.has(request.id)) repeat(request.id);
    else if (queue.length >= mostWaiting)
      refuse(request.id, 'not-possible-here', 'Too many requests wait already.');
    else enqueue(request);
  }

  function enqueue(request: RequestMessage): void {
    heard.set(request.id, undefined);
    for (const id of heard.keys()) if (heard.size > mostRemembered) heard.delete(id);
    queue.push(request);
    options.onWaiting();
  }

  /** A repetition of one that still waits is not a question of its own: its answer will come. */
  function repeat(id: string): void {
    const answer = heard.get(id);
    if (answer !== undefined)
      options.send({ id, accepted: false, code: 'repeated', text: `Answered before: ${answer.text}` });
  }

  return {
    hear(payload, retained) {
      const content = contentOf(payload);
      const parsed = requestMessageSchema.safeParse(content);
      // A retained request would be obeyed again after every restart.
      if (retained) refuse(idOf(content), 'retained', 'A request must not be retained.');
      else if (parsed.success) accept(parsed.data);
      else
        refuse(idOf(content), 'malformed', `The request is malformed: ${firstFault(parsed.error.issues)}.`);
    },
    take: () => queue.shift() ?? null,
    answer(request, answer) {
      heard.set(request.id, answer);
      options.send(answer);
      options.onAnswered(request, answer);
    },
  };
}

function contentOf(payload: Uint8Array): unknown {
  if (payload.length > mostBytes) return undefined;
  try {
    return JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(payload));
  } catch {
    return undefined;
  }
}

/** The id of a request that is wrong otherwise, so that its asker can be told. */
function idOf(content: unknown): string | undefined {
  if (typeof content !== 'object' || content === null || !('id' in content)) return undefined;
  return requestIdSchema.safeParse(content.id).data;
}

function firstFault(
  issues: readonly { readonly path: readonly PropertyKey[]; readonly message: string }[],
): string {
  const [first] = issues;
  const place = first?.path.map(String).join('.').slice(0, 80);
  return place ? `${place}: ${first?.message.slice(0, 120)}` : 'it is no JSON object of the known form';
}
