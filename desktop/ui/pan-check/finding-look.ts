import type { PanFinding } from '../../../shared-types/pan-check.ts';

/** How a finding is shown: sign and look say the same as its words do. */
export type FindingLook = 'calm' | 'worse' | 'better' | 'open';

const looks: Readonly<Record<PanFinding['code'], FindingLook>> = {
  'as-good': 'calm',
  'gathers-less': 'worse',
  'gathers-more': 'better',
  'loses-more': 'worse',
  'loses-less': 'better',
  'contact-poorer': 'worse',
  'contact-better': 'better',
  shaded: 'worse',
  'not-sure': 'open',
  'nothing-to-compare': 'open',
};

export const lookOf = ({ code }: Pick<PanFinding, 'code'>): FindingLook => looks[code];

export const findingSigns: Readonly<Record<FindingLook, string>> = {
  calm: '✓',
  worse: '!',
  better: '↑',
  open: '?',
};
