/** A mutant that no test can kill, since the engine does the same with it. */
export interface Equivalent {
  /** Below `controller/engine/`. */
  readonly file: string;
  /** The source that is replaced, with what replaces it; both with single blanks. */
  readonly from: string;
  readonly to: string;
  readonly reason: string;
}

export const equivalents: readonly Equivalent[] = [];
