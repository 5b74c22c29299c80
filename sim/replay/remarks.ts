/** Remarks of a replay, each once and not without end. */
export interface Remarks {
  add(text: string): void;
  list(): string[];
}

const mostRemarks = 20;

export function createRemarks(): Remarks {
  const texts = new Set<string>();
  let more = 0;
  return {
    add: (text) => {
      if (texts.has(text)) return;
      if (texts.size < mostRemarks) texts.add(text);
      else more++;
    },
    list: () => [...texts, ...(more === 0 ? [] : [`And ${more} remarks more.`])],
  };
}

/** Puts an instant into words, as a zone's clocks show it. */
export type Moment = (atMs: number, timeZone: string) => string;

/** An instant within a day, such as 14:05:10. */
export const localTime: Moment = (atMs, timeZone) =>
  new Intl.DateTimeFormat('en-GB', { timeZone, timeStyle: 'medium' }).format(atMs);

/** An instant among days, such as 2031-06-21 14:05:10. */
export const localDayTime: Moment = (atMs, timeZone) =>
  new Intl.DateTimeFormat('sv-SE', { timeZone, dateStyle: 'short', timeStyle: 'medium' }).format(atMs);
