import type { LogEvent } from '../../../shared-types/log.ts';
import { en } from '../text/en.ts';
import { markedKinds, markShapes, marksOf } from './marks.ts';

/** What the shapes over the curves mean, as far as there are any: items for the key below them. */
export function MarkKey({ events }: { readonly events: readonly LogEvent[] }) {
  const marks = marksOf(events);
  const present = markedKinds.filter((kind) => marks.some((mark) => mark.kind === kind));
  return present.map((kind) => (
    <li key={kind}>
      <span aria-hidden="true">{markShapes[kind]}</span> {en.events[kind]}
    </li>
  ));
}
