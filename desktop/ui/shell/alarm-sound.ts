/** Frequencies of the two tones, one after the other [Hz], and the length of each [s]. Design choices. */
const tonesHz = [880, 660] as const;
const toneS = 0.18;
/** Loudness, 0 to 1: heard across a room, startling nobody. A design choice. */
const loudness = 0.2;
/** Time in which a tone fades in and out, so that it does not click [s]. */
const fadeS = 0.02;
/** Least time between two sounds [ms]: many alarms at a time are one sound. */
export const pauseMs = 10_000;
/** A sound that the browser lets out later than this tells nothing new any more [ms]. */
export const lateMs = 2000;

interface Gain {
  setValueAtTime(value: number, atS: number): unknown;
  linearRampToValueAtTime(value: number, atS: number): unknown;
}

/** What of the browser's audio context is used; a test hands in its own. */
export interface SoundContext {
  readonly currentTime: number;
  readonly destination: unknown;
  resume(): Promise<void>;
  createGain(): { readonly gain: Gain; connect(to: never): unknown };
  createOscillator(): {
    readonly frequency: { value: number };
    connect(to: never): unknown;
    start(atS: number): void;
    stop(atS: number): void;
  };
}

export interface AlarmSound {
  /** Sounds, if the browser lets it; never throws and keeps nobody waiting. */
  play(): void;
}

/**
 * @param newContext - Makes the browser's audio context, at the first sound.
 * @param nowMs - A clock that never steps back [ms].
 */
export function createAlarmSound(newContext: () => SoundContext, nowMs: () => number): AlarmSound {
  let context: SoundContext | undefined;
  let lastMs = Number.NEGATIVE_INFINITY;

  async function sound(): Promise<void> {
    const askedMs = nowMs();
    if (askedMs - lastMs < pauseMs) return;
    lastMs = askedMs;
    context ??= newContext();
    // Before the first click on the page a browser holds sounds back, until that click comes.
    await context.resume();
    if (nowMs() - askedMs > lateMs) return;
    for (const [index, frequencyHz] of tonesHz.entries()) tone(context, frequencyHz, index * toneS);
  }

  return {
    play() {
      // A machine without a loudspeaker misses the sound; the alarm stands on the screen all the same.
      sound().catch(() => undefined);
    },
  };
}

function tone(context: SoundContext, frequencyHz: number, afterS: number): void {
  const startS = context.currentTime + afterS;
  const gain = context.createGain();
  gain.gain.setValueAtTime(0, startS);
  gain.gain.linearRampToValueAtTime(loudness, startS + fadeS);
  gain.gain.setValueAtTime(loudness, startS + toneS - fadeS);
  gain.gain.linearRampToValueAtTime(0, startS + toneS);
  gain.connect(context.destination as never);
  const oscillator = context.createOscillator();
  oscillator.frequency.value = frequencyHz;
  oscillator.connect(gain as never);
  oscillator.start(startS);
  oscillator.stop(startS + toneS);
}
