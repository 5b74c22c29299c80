import type { DaySummary } from '../../../shared-types/log.ts';
import { daysBetween, newestDays } from '../replay/chosen-days.ts';
import { en } from '../text/en.ts';
import type { PanForm, SpanDraft } from './pan-form.ts';

/** What the form of a pan check says. */
export interface PanPlan {
  readonly days: readonly string[];
  /** None: the oldest of the days. */
  readonly referenceDays: readonly string[];
  /** What is wrong with it; null when nothing is. */
  readonly fault: string | null;
}

const { faults } = en.panCheck.form;

/** Days that are looked at unless told otherwise. A design choice. */
const usualDays = 60;
/** Days that stand in the reference's own fields at first. A design choice. */
const usualReferenceDays = 10;
/** The host takes no more. */
const mostDays = 732;

/** What stands in the form before anybody typed: the newest days, compared with the oldest of them. */
export function firstPanForm(kept: readonly DaySummary[], today: string | undefined): PanForm {
  const days = newestDays(kept, today, usualDays);
  const from = days[0] ?? '';
  return {
    look: { from, to: days.at(-1) ?? '' },
    by: 'oldest',
    reference: { from, to: days.slice(0, usualReferenceDays).at(-1) ?? '' },
  };
}

/** @param today - Left out: the controller still writes it. */
export function readPanForm(
  { look, by, reference }: PanForm,
  kept: readonly DaySummary[],
  today: string | undefined,
): PanPlan {
  const within = ({ from, to }: SpanDraft) => daysBetween(kept, today, from, to);
  const days = within(look);
  const referenceDays = by === 'oldest' ? [] : within(reference);
  const fault =
    spanFault(look, days, faults.none) ??
    (by === 'oldest' ? null : spanFault(reference, referenceDays, faults.noReference));
  return { days, referenceDays, fault };
}

function spanFault({ from, to }: SpanDraft, days: readonly string[], none: string): string | null {
  if (from === '' || to === '') return faults.unchosen;
  if (from > to) return faults.order;
  if (days.length === 0) return none;
  return days.length > mostDays ? faults.many(mostDays) : null;
}
