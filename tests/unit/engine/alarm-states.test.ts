import { describe, expect, it } from 'vitest';
import { Alarm } from './alarm-rig.ts';

type State = Alarm['state'] | 'shelved, over';
type Event = 'raised' | 'returns' | 'acknowledged' | 'shelved' | 'taken off the shelf' | 'shelf ends';

/** Minutes of a shelf: longer than it takes an alarm of the rig to return. */
const shelfMin = 90;

const events: Readonly<Record<Event, (alarm: Alarm) => unknown>> = {
  raised: (alarm) => alarm.raise(),
  returns: (alarm) => alarm.letReturn(),
  acknowledged: (alarm) => alarm.acknowledge(),
  shelved: (alarm) => alarm.shelve(shelfMin),
  'taken off the shelf': (alarm) => alarm.unshelve(),
  'shelf ends': (alarm) => alarm.loop.run(shelfMin * 60, 20),
};

/** How each state is reached from normal. */
const ways: Readonly<Record<Exclude<State, 'suppressed'>, readonly Event[]>> = {
  normal: [],
  unacknowledged: ['raised'],
  acknowledged: ['raised', 'acknowledged'],
  'returned-unacknowledged': ['raised', 'returns'],
  shelved: ['raised', 'shelved'],
  'shelved, over': ['raised', 'shelved', 'returns'],
};

/**
 * The state diagram of IEC 62682 (alarm states and what leads from one to another), from memory: from a state,
 * by an event, into a state; with the answer where a person asks. Two things are choices of ours: an alarm that is normal
 * cannot be put on the shelf, and one that came off it is to be seen anew even if it was seen before.
 * Suppression by design is walked beside its causes, in the tests of followers.
 */
const rows: readonly (readonly [keyof typeof ways, Event, State, string | null])[] = [
  ['normal', 'raised', 'unacknowledged', null],
  ['normal', 'acknowledged', 'normal', 'no-such-alarm'],
  ['normal', 'shelved', 'normal', 'no-such-alarm'],
  ['normal', 'taken off the shelf', 'normal', 'no-such-alarm'],
  ['unacknowledged', 'raised', 'unacknowledged', null],
  ['unacknowledged', 'returns', 'returned-unacknowledged', null],
  ['unacknowledged', 'acknowledged', 'acknowledged', 'accepted'],
  ['unacknowledged', 'shelved', 'shelved', 'accepted'],
  ['unacknowledged', 'taken off the shelf', 'unacknowledged', 'nothing-to-do'],
  ['acknowledged', 'raised', 'acknowledged', null],
  ['acknowledged', 'returns', 'normal', null],
  ['acknowledged', 'acknowledged', 'acknowledged', 'nothing-to-do'],
  ['acknowledged', 'shelved', 'shelved', 'accepted'],
  ['acknowledged', 'taken off the shelf', 'acknowledged', 'nothing-to-do'],
  ['returned-unacknowledged', 'raised', 'unacknowledged', null],
  ['returned-unacknowledged', 'returns', 'returned-unacknowledged', null],
  ['returned-unacknowledged', 'acknowledged', 'normal', 'accepted'],
  ['returned-unacknowledged', 'shelved', 'shelved, over', 'accepted'],
  ['returned-unacknowledged', 'taken off the shelf', 'returned-unacknowledged', 'nothing-to-do'],
  ['shelved', 'raised', 'shelved', null],
  ['shelved', 'returns', 'shelved, over', null],
  ['shelved', 'acknowledged', 'shelved', 'nothing-to-do'],
  ['shelved', 'shelved', 'shelved', 'accepted'],
  ['shelved', 'taken off the shelf', 'unacknowledged', 'accepted'],
  ['shelved', 'shelf ends', 'unacknowledged', null],
  ['shelved, over', 'raised', 'shelved', null],
  ['shelved, over', 'acknowledged', 'shelved, over', 'nothing-to-do'],
  ['shelved, over', 'shelved', 'shelved, over', 'accepted'],
  ['shelved, over', 'taken off the shelf', 'normal', 'accepted'],
  ['shelved, over', 'shelf ends', 'normal', null],
];

const stateOf = (alarm: Alarm): State =>
  alarm.state === 'shelved' && !alarm.isActive ? 'shelved, over' : alarm.state;

describe('the state of an alarm', () => {
  it.each(rows)('from %s, when it is %s, is %s', (from, event, to, answer) => {
    const alarm = new Alarm();
    for (const way of ways[from]) events[way](alarm);
    expect(stateOf(alarm)).toBe(from);
    const said = events[event](alarm);
    expect(stateOf(alarm)).toBe(to);
    if (answer !== null) expect(said).toBe(answer);
  });

  it('is walked from every state by every event that can come there', () => {
    const walked = new Set(rows.map(([from, event]) => `${from}, ${event}`));
    const cannotCome = new Set([
      'normal, returns',
      'shelved, over, returns',
      ...['normal', 'unacknowledged', 'acknowledged', 'returned-unacknowledged'].map(
        (state) => `${state}, shelf ends`,
      ),
    ]);
    for (const state of Object.keys(ways))
      for (const event of Object.keys(events)) {
        const name = `${state}, ${event}`;
        expect(walked.has(name) !== cannotCome.has(name), name).toBe(true);
      }
  });
});
