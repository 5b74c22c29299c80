import { type EngineState, initialState } from '../../../controller/engine/index.ts';
import type { ReasonCode } from '../../../shared-types/reasons.ts';
import type { Ground, Invariant, Seen } from '../invariants/invariant.ts';
import { Watch } from '../invariants/watch.ts';
import { alphabetOf, type Event, inputsOf } from './alphabet.ts';
import { keyOf } from './key.ts';

interface Node {
  readonly tried: EngineState[];
  /** Where its events lead, by the number of the node. */
  readonly next: Set<number>;
}

export interface Explored {
  readonly states: number;
  readonly transitions: number;
  readonly reasons: ReadonlySet<ReasonCode>;
  /** What was broken first, with the event that broke it. */
  readonly broken: string | undefined;
  readonly nodes: readonly Node[];
}

export interface Depth {
  /** Every class of every reading, or fewer where there would be very many. */
  readonly whole: boolean;
  /** Concrete states that are tried of each abstract one, since times within a class may matter. */
  readonly representatives: number;
}

/**
 * Follows every event from every state that is reached, breadth first, until no new abstract state appears.
 *
 * This shows that no event out of the alphabet breaks an invariant in any concrete state that was tried, and that
 * these states cover every combination of phase, water, latches, lease, failures and running times that the alphabet
 * leads to. It is no proof for all numbers: of each combination only the states that were met first are tried, and
 * readings between the classes, other settings and other mixtures of events in time are left to the random
 * sequences.
 */
export function explore(
  { site, settings, step }: Ground,
  invariants: readonly Invariant[],
  { whole, representatives }: Depth,
): Explored {
  const ground: Ground = { site, settings, step };
  const events = alphabetOf(site, whole);
  const numbers = new Map<string, number>();
  const nodes: Node[] = [];
  const reasons = new Set<ReasonCode>();
  const queue: { readonly state: EngineState; readonly node: Node }[] = [];
  let transitions = 0;

  /** The number of the node of a state, which is queued when it has not been tried often enough. */
  function place(state: EngineState): number {
    const key = keyOf(state);
    let number = numbers.get(key);
    if (number === undefined) {
      number = nodes.length;
      numbers.set(key, number);
      nodes.push({ tried: [], next: new Set() });
    }
    const node = nodes[number] as Node;
    if (node.tried.length < representatives) {
      node.tried.push(state);
      queue.push({ state, node });
    }
    return number;
  }

  place(initialState());
  for (let at = 0; at < queue.length; at++) {
    const { state, node } = queue[at] as (typeof queue)[number];
    for (const event of events) {
      transitions++;
      const after = follow(state, event, `request-${transitions}`, ground, invariants, reasons);
      if (typeof after === 'string')
        return { states: nodes.length, transitions, reasons, broken: after, nodes };
      node.next.add(place(after));
    }
  }
  return { states: nodes.length, transitions, reasons, broken: undefined, nodes };
}

/** The state after an event, or what it broke. */
function follow(
  from: EngineState,
  event: Event,
  id: string,
  ground: Ground,
  invariants: readonly Invariant[],
  reasons: Set<ReasonCode>,
): EngineState | string {
  const watch = new Watch(invariants, ground);
  let before = from;
  for (const input of inputsOf(event, id)) {
    const { state, decision } = ground.step(before, input, ground.site, ground.settings);
    const seen: Seen = { before, input, state, decision };
    const broken = watch.look(seen);
    if (broken !== undefined)
      return `${broken} (${event.name}, ${event.elapsedMs} ms, from ${keyOf(before)})`;
    for (const { code } of Object.values(decision.reasons)) reasons.add(code);
    before = state;
  }
  return before;
}

/** Numbers of the nodes from which none of the wanted ones can be reached. */
export function trapped(nodes: readonly Node[], wanted: (state: EngineState) => boolean): number[] {
  const from: number[][] = nodes.map(() => []);
  for (const [number, { next }] of nodes.entries()) for (const to of next) from[to]?.push(number);
  const reached = new Set<number>();
  const queue: number[] = [];
  for (const [number, { tried }] of nodes.entries())
    if (tried.some(wanted)) {
      reached.add(number);
      queue.push(number);
    }
  for (let at = 0; at < queue.length; at++)
    for (const number of from[queue[at] as number] ?? [])
      if (!reached.has(number)) {
        reached.add(number);
        queue.push(number);
      }
  return [...nodes.keys()].filter((number) => !reached.has(number));
}
