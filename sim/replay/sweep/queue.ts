/** Some sets of settings to be tried on one day, in one go. */
export interface Unit {
  readonly day: number;
  readonly points: readonly number[];
}

/** Hands out what is still to be done, in an order that does not matter to the result. */
export interface Queue {
  /** @param ownDay - The day that the asker has made ready, which would cost time to make ready again. */
  next(ownDay: number | undefined): Unit | undefined;
  /** Nothing more of a day that cannot be lived again. */
  drop(day: number): void;
}

/** Small enough that workers end at about the same time; a design choice. */
const pointsPerUnit = 4;

/** @param missing - Of each day, the points that are not yet known. */
export function createQueue(missing: readonly (readonly number[])[]): Queue {
  const left = missing.map((points) => [...points]);
  const begun = new Set<number>();
  const has = (day: number | undefined): day is number => day !== undefined && (left[day]?.length ?? 0) > 0;

  function pick(ownDay: number | undefined): number | undefined {
    if (has(ownDay)) return ownDay;
    const open = left.map((_, day) => day).filter(has);
    const fresh = open.find((day) => !begun.has(day));
    // Else that with the most to do: making it ready once more pays soonest there.
    return fresh ?? open.toSorted((a, b) => (left[b]?.length ?? 0) - (left[a]?.length ?? 0))[0];
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
