/** One number that a builder wants to know, with its unit and what it is good for. */
export interface Figure {
  readonly name: string;
  /** null: never, or not with such a loop. */
  readonly value: number | null;
  readonly unit: string;
  readonly why: string;
}

/** What a builder should think over, or what cannot be built at all. */
export interface Remark {
  readonly code: string;
  readonly text: string;
}

export interface Section {
  readonly title: string;
  readonly figures: readonly Figure[];
  readonly warnings: readonly Remark[];
}

export interface Survey {
  readonly site: string;
  readonly title: string;
  readonly sections: readonly Section[];
  readonly warnings: readonly Remark[];
  readonly refusals: readonly Remark[];
}

export function figure(name: string, value: number | null, unit: string, why: string): Figure {
  return { name, value, unit, why };
}

/** A warning where it holds, else nothing. */
export function warnIf(holds: boolean, code: string, text: string): readonly Remark[] {
  return holds ? [{ code, text }] : [];
}
