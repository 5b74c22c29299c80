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

/** An instant as the zone's clocks show it, such as 14:05:10. */
export function localTime(atMs: number, timeZone: string): string {
  return new Intl.DateTimeFormat('en-GB', { timeZone, timeStyle: 'medium' }).format(atMs);
}
