import type { DatabaseSync } from 'node:sqlite';

/** Words and their numbers, kept once in the file and remembered here. */
export interface Words {
  /** @returns the word's number; an unknown word gets one and is kept. */
  numberOf(word: string): number;
  /** @throws RangeError when the file holds no such word. */
  wordOf(number: number): string;
  /** Drops what is remembered, for when a transaction was rolled back. */
  forget(): void;
}

export function openWords(database: DatabaseSync): Words {
  const numbers = new Map<string, number>();
  const words = new Map<number, string>();
  const remember = (word: string, number: number) => {
    numbers.set(word, number);
    words.set(number, word);
    return number;
  };
  return {
    numberOf(word) {
      const known = numbers.get(word);
      if (known !== undefined) return known;
      const row = database.prepare('SELECT id FROM words WHERE word = ?').get(word);
      if (row !== undefined) return remember(word, Number(row['id']));
      const { lastInsertRowid } = database.prepare('INSERT INTO words (word) VALUES (?)').run(word);
      return remember(word, Number(lastInsertRowid));
    },
    wordOf(number) {
      const known = words.get(number);
      if (known !== undefined) return known;
      const row = database.prepare('SELECT word FROM words WHERE id = ?').get(number);
      if (row === undefined) throw new RangeError(`the word ${number} is missing`);
      remember(String(row['word']), number);
      return String(row['word']);
    },
    forget() {
      numbers.clear();
      words.clear();
    },
  };
}
