import type { LogEvent } from '../../../shared-types/log.ts';

/** An event that charts mark, each kind with a shape of its own. */
export interface ChartMark {
  readonly atMs: number;
  readonly kind: MarkKind;
}

/** Events that stand over the curves; the list of events says what each of them was. */
export const markedKinds = ['alarm-raised', 'request-answered', 'settings-changed'] as const;
export type MarkKind = (typeof markedKinds)[number];

export const markShapes: Readonly<Record<MarkKind, string>> = {
  'alarm-raised': '▲',
  'request-answered': '◆',
  'settings-changed': '■',
};

const isMarked = (kind: LogEvent['kind']): kind is MarkKind =>
  (markedKinds as readonly string[]).includes(kind);

export function marksOf(events: readonly LogEvent[]): readonly ChartMark[] {
  return events.flatMap(({ atMs, kind }) => (isMarked(kind) ? [{ atMs, kind }] : []));
}
