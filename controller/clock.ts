/**
 * The clock of a controller or a simulated device.
 *
 * `nowMs` is the calendar (UTC), `steadyMs` never steps back, `speed` is how many of its seconds pass
 * in a second of the wall. A speed other than 1 serves a simulated loop: controller and device are
 * given the same anchor and so stay together without talking about time.
 */
export interface Clock {
  readonly speed: number;
  /** True where the calendar is not the machine's. */
  readonly simulated: boolean;
  nowMs(): number;
  steadyMs(): number;
}

/** The machine's own clocks. */
export const wallClock: Clock = {
  speed: 1,
  simulated: false,
  nowMs: () => Date.now(),
  steadyMs: () => performance.now(),
};

export interface ClockAnchor {
  /** Calendar instant shown at the anchor [UTC ms]. */
  readonly showsMs: number;
  /** Wall instant of the anchor [UTC ms]. */
  readonly atWallMs: number;
  readonly speed: number;
}

/**
 * A clock that runs from `anchor` at its speed. Until the anchor it stands, so that all who live by it
 * can make themselves ready before the first second passes.
 */
export function anchoredClock({ showsMs, atWallMs, speed }: ClockAnchor): Clock {
  const sinceAnchorMs = (wallMs: number) => Math.max(0, wallMs - atWallMs) * speed;
  const steadyBase = performance.now();
  const wallBase = Date.now();
  return {
    speed,
    simulated: true,
    nowMs: () => Math.round(showsMs + sinceAnchorMs(Date.now())),
    steadyMs: () => showsMs + sinceAnchorMs(wallBase + performance.now() - steadyBase),
  };
}

/** Text form of an anchor for a command line: `SHOWS_MS@WALL_MS*SPEED`. */
export function formatAnchor(anchor: ClockAnchor): string {
  return `${anchor.showsMs}@${anchor.atWallMs}*${anchor.speed}`;
}

/** @returns undefined when the text is not an anchor with a speed of 0.01 to 3600. */
export function parseAnchor(text: string): ClockAnchor | undefined {
  const match = /^(-?\d+)@(\d+)\*(\d+(?:\.\d+)?)$/.exec(text);
  if (match === null) return undefined;
  const speed = Number(match[3]);
  if (speed < 0.01 || speed > 3600) return undefined;
  return { showsMs: Number(match[1]), atWallMs: Number(match[2]), speed };
}
