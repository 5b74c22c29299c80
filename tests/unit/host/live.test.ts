import { describe, expect, it } from 'vitest';
import { mostIgnoredTopics } from '../../../desktop/host/ignored-messages.ts';
import { createLive } from '../../../desktop/host/live.ts';
import type { Problem } from '../../../shared-types/monitor-api.ts';

const broken = new TextEncoder().encode('{}');
const unreachable: Problem = { severity: 'error', text: 'The broker cannot be reached.' };
const damaged: Problem = { severity: 'warning', text: 'A log is damaged.' };

/** The problems that a host tells after broken messages on so many topics, and two problems of its own. */
function problemsAfter(topics: number): Problem[] {
  const live = createLive({ brokerUrl: '', brokerConnected: () => false, onAnswer: () => undefined });
  for (let topic = 0; topic < topics; topic++) live.take(`flatwater/site-${topic}/snapshot`, broken, false);
  live.put('broker', unreachable);
  live.put('log', damaged);
  const { problems } = live.host();
  live.close();
  return problems;
}

describe('messages that cannot be understood', () => {
  it('never keep a problem of the broker or of a log from being told', () => {
    expect(problemsAfter(200)).toEqual(expect.arrayContaining([unreachable, damaged]));
  });

  it('are told topic by topic for the first few, and together beyond', () => {
    expect(problemsAfter(mostIgnoredTopics)).toHaveLength(mostIgnoredTopics + 2);
    expect(problemsAfter(mostIgnoredTopics + 1)[mostIgnoredTopics]).toEqual({
      severity: 'warning',
      text: 'A message on further topics could not be understood.',
    });
    const many = problemsAfter(mostIgnoredTopics + 190);
    expect(many).toHaveLength(mostIgnoredTopics + 3);
    expect(many[mostIgnoredTopics]?.text).toBe('190 messages on further topics could not be understood.');
  });
});
