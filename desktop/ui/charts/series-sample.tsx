import type { Scheme } from './colours.ts';
import { type SeriesName, seriesLooks } from './series.ts';

/** A piece of the curve as it is drawn, with its colour and its dashes. */
export function SeriesSample({ name, scheme }: { readonly name: SeriesName; readonly scheme: Scheme }) {
  const { colour, dash } = seriesLooks[name];
  return (
    <svg width="26" height="10" aria-hidden="true" focusable="false">
      <path
        d="M0 5H26"
        stroke={colour[scheme]}
        strokeWidth="2.5"
        strokeDasharray={dash.join(' ')}
        fill="none"
      />
    </svg>
  );
}
