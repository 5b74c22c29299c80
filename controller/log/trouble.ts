/** Why a log cannot be used: what passes, and what does not. */
export interface Trouble {
  readonly passing: boolean;
  readonly text: string;
}

/** A log that this program must not write or cannot understand, said in words. */
export class LogTrouble extends Error {}

/** Primary result codes of SQLite. Source: https://sqlite.org/rescode.html */
const results: Readonly<Record<number, Trouble>> = {
  3: { passing: true, text: 'this program may not write the log' },
  5: { passing: true, text: 'another program holds the log' },
  6: { passing: true, text: 'another program holds the log' },
  8: { passing: true, text: 'the log or its folder is read-only' },
  10: { passing: true, text: 'the disk does not answer as it should' },
  11: { passing: false, text: 'the log is damaged' },
  13: { passing: true, text: 'the disk is full' },
  14: { passing: true, text: 'the log or its folder cannot be opened' },
  26: { passing: false, text: 'the log is damaged: it is no database any more' },
};

/** Puts an error of the database into words. */
export function troubleOf(thrown: unknown): Trouble {
  if (thrown instanceof LogTrouble) return { passing: false, text: thrown.message };
  const words = thrown instanceof Error ? thrown.message : String(thrown);
  const known = results[primaryCode(thrown)];
  return known === undefined
    ? { passing: false, text: words }
    : { ...known, text: `${known.text} (${words})` };
}

function primaryCode(thrown: unknown): number {
  const code = thrown instanceof Error && 'errcode' in thrown ? thrown.errcode : 0;
  return typeof code === 'number' ? code & 0xff : 0;
}
