import { z } from 'zod';

/** A text that the page wants to save: the name that it proposes, and what is in it. */
export const savedTextSchema = z.strictObject({
  name: z.string().regex(/^[\w-][\w. -]{0,99}$/),
  /** Some 5 MB for a day of every curve; the bound is a design choice. */
  text: z.string().max(50_000_000),
});
export type SavedText = z.infer<typeof savedTextSchema>;

/** What came of it. */
export type SaveOutcome =
  | { readonly kind: 'saved' | 'dropped' }
  | { readonly kind: 'failed'; readonly text: string };
