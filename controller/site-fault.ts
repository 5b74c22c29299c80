/** One thing that is wrong with a site file, and where. */
export interface SiteFault {
  readonly file: string;
  /** Line, counted from 1; 0 when the fault is the file's as a whole. */
  readonly line: number;
  /** Path of the key, its parts joined by dots; empty for the whole file. */
  readonly key: string;
  readonly found: string;
  readonly allowed: string;
}

/** A fault as one line for a person, in the form that editors jump to. */
export function formatSiteFault({ file, line, key, found, allowed }: SiteFault): string {
  const place = line === 0 ? file : `${file}:${line}`;
  return `${place}: ${key === '' ? '' : `${key}: `}found ${found}; allowed: ${allowed}`;
}
