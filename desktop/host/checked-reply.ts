import { type MonitorMethod, type MonitorReply, monitorMethods } from '../../shared-types/monitor-api.ts';
import { firstIssue, refusal, wordsOf } from './replies.ts';

/** A log written by another version may hold what the screens do not know: it stops here. */
export function checkedReply<M extends MonitorMethod>(
  method: M,
  site: string,
  reply: MonitorReply<M>,
): MonitorReply<M> {
  if (!reply.ok) return reply;
  const result = monitorMethods[method].result.safeParse(reply.result);
  if (result.success) return reply;
  return refusal(
    'error',
    `The log of ${site} holds what this version cannot read: ${firstIssue(result.error)}.`,
  );
}

/** Words for what a question to a log threw: a RangeError is about the question, all else about the log. */
export function thrownReply(site: string, thrown: unknown) {
  if (thrown instanceof RangeError) return refusal('note', `${site}: ${wordsOf(thrown)}.`);
  return refusal('error', `The log of ${site} could not be read: ${wordsOf(thrown)}.`);
}

export const noLog = (site: string) =>
  refusal(
    'note',
    `There is no log of ${site} on this machine.`,
    "Start the monitor with the controller's data folder.",
  );
