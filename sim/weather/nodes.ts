const nodeMs = 300_000;

/** Values at the two full five minutes around an instant. */
export interface Nodes<T> {
  readonly before: T;
  readonly after: T;
  /** Goes to an instant; returns how far it lies from `before` to `after`, 0 to 1. */
  moveTo(atMs: number): number;
}

/**
 * Slow quantities at fixed instants, to be joined by straight lines. The instants are multiples of five minutes,
 * so that a value does not depend on what was asked before.
 */
export function createNodes<T>(valueAt: (atMs: number) => T): Nodes<T> {
  let index = Number.NaN;
  const nodes = {
    before: undefined as T,
    after: undefined as T,
    moveTo(atMs: number): number {
      const place = atMs / nodeMs;
      const wanted = Math.floor(place);
      if (wanted !== index) {
        nodes.before = wanted === index + 1 ? nodes.after : valueAt(wanted * nodeMs);
        nodes.after = valueAt((wanted + 1) * nodeMs);
        index = wanted;
      }
      return place - wanted;
    },
  };
  return nodes;
}
