import { z } from 'zod';
import {
  type MonitorApi,
  type MonitorCall,
  type MonitorWire,
  monitorCallSchema,
} from '../../shared-types/monitor-api.ts';
import { firstIssue, refusal, wordsOf } from './replies.ts';

/** The id under which a call is answered that brought none. */
export const unknownCallId = -1;

const idSchema = z.object({ id: z.int() });

/** Answers whatever came over a wire. Never throws and never leaves a call without an answer. */
export async function answerCall(api: MonitorApi, raw: unknown): Promise<MonitorWire> {
  const call = monitorCallSchema.safeParse(raw);
  if (!call.success) {
    const id = idSchema.safeParse(raw).data?.id ?? unknownCallId;
    return { id, ...refusal('error', `Not a call that the monitor knows: ${firstIssue(call.error)}.`) };
  }
  return answered(api, call.data);
}

async function answered(api: MonitorApi, { id, method, params }: MonitorCall): Promise<MonitorWire> {
  try {
    // The host checks the parameters against the method's own schema.
    const reply = await api.call(method, params as never);
    return reply.ok ? { id, ok: true, result: reply.result } : { id, ok: false, problem: reply.problem };
  } catch (thrown) {
    return { id, ...refusal('error', `The monitor failed: ${wordsOf(thrown)}.`) };
  }
}

/** The same for a call in JSON text. */
export async function answerText(api: MonitorApi, text: string): Promise<MonitorWire> {
  let raw: unknown;
  try {
    raw = JSON.parse(text);
  } catch {
    return { id: unknownCallId, ...refusal('error', 'Not a call that the monitor knows: it is not JSON.') };
  }
  return answerCall(api, raw);
}
