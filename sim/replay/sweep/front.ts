/** What speaks for and against a set of settings. */
export interface Trade {
  /** The more the better [J]. */
  readonly heatJ: number;
  /** The fewer the better; any further costs go along in the same order for all. */
  readonly costs: readonly number[];
}

/** True when `a` brings at least as much heat for no more of any cost, and is better in one of them. */
export function dominates(a: Trade, b: Trade): boolean {
  if (a.heatJ < b.heatJ) return false;
  if (a.costs.some((cost, index) => cost > (b.costs[index] as number))) return false;
  return a.heatJ > b.heatJ || a.costs.some((cost, index) => cost < (b.costs[index] as number));
}

/** Which of the trades no other dominates. */
export function frontOf(trades: readonly Trade[]): boolean[] {
  return trades.map((trade) => !trades.some((other) => dominates(other, trade)));
}
