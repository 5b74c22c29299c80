import type { Problem } from '../../shared-types/monitor-api.ts';

/** Topics whose messages are told apart; those of all others are told as one. A design choice. */
export const mostIgnoredTopics = 10;

/**
 * Counts messages that were not understood: one problem for a topic, however many come, and one for all topics beyond
 * the first few. A flood of strange topics fills neither the memory nor a screen.
 *
 * @param put - Told the problem anew with each message.
 */
export function countIgnored(put: (cause: string, problem: Problem) => void) {
  const counts = new Map<string, number>();
  let further = 0;

  return (topic: string, reason: string): void => {
    const shown = printable(topic);
    if (counts.has(shown) || counts.size < mostIgnoredTopics) {
      const count = (counts.get(shown) ?? 0) + 1;
      counts.set(shown, count);
      const words = `${were(count)} on ${shown} could not be understood. The last: ${printable(reason)}.`;
      put(`ignored ${shown}`, warning(words));
    } else {
      further++;
      put('ignored further', warning(`${were(further)} on further topics could not be understood.`));
    }
  };
}

const were = (count: number) => (count === 1 ? 'A message' : `${count} messages`);
const warning = (text: string): Problem => ({ severity: 'warning', text });

/** What came over a wire, short and without control characters. */
function printable(text: string): string {
  return text.replace(/\p{Cc}/gu, '?').slice(0, 200);
}
