/** Some sets of settings to be tried on one day, in one go. */
export interface Unit {
  readonly day: number;
  readonly points: readonly number[];
}

/** Hands out what is still to be done, in an order that does not matter to the result. */
export interface Queue {
  /**
   * @param ownDay - The day that the asker has made ready, which would cost time to make ready again.
   * @returns undefined when nothing is left, or no more than whoever is at it does sooner alone.
   */
  next(ownDay: number | undefined): Unit | undefined;
  /** Nothing more of a day that cannot be lived again. */
  drop(day: number): void;
}

/** Small enough that workers end at about the same time; a design choice. */
const pointsPerUnit = 4;
/**
 * Fewer points of a day than this are left to whoever has it ready: making it ready once more takes as long as
 * trying two to six of them. A design choice.
 */
const leastShared = 12;

/** @param missing - Of each day, the points that are not yet known. */
export function createQueue(missing: readonly (readonly number[])[]): Queue {
  const left = missing.map((points) => [...points]);
  const begun = new Set<number>();
  const leftOf = (day: number) => left[day]?.length ?? 0;
  const has = (day: number | undefined): day is number => day !== undefined && leftOf(day) > 0;

  function pick(ownDay: number | undefined): number | undefined {
    if (has(ownDay)) return ownDay;
    const open = left.map((_, day) => day).filter(has);
    const fresh = open.find((day) => !begun.has(day));
    if (fresh !== undefined) return fresh;
    const [longest] = open.toSorted((a, b) => leftOf(b) - leftOf(a));
    return longest !== undefined && leftOf(longest) >= leastShared ? longest : undefined;
  }

  return {
    next(ownDay) {
      const day = pick(ownDay);
      if (day === undefined) return undefined;
      begun.add(day);
      return { day, points: left[day]?.splice(0, pointsPerUnit) ?? [] };
    },
    drop(day) {
      left[day] = [];
    },
  };
}
