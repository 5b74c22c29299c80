import type { PanFinding } from '../../shared-types/pan-check.ts';
import { type Ailment, ailments, checkedPan } from '../support/pan-cases.ts';
import { report } from './figure.ts';

const bench = 'pan';
const seeds = 8;
const sites = ['quillhaven-wash-house', 'fennick-holm-nursery'] as const;
const cases = sites.length * seeds;

/** How often a pan check accuses a good pan, and finds what ails another: 24 days of June, the last eight of them ailing. */
export function benchPan(): void {
  const accused = findings(ailments.none);
  report({ bench, figure: 'loops that run steadily enough', value: accused.length / cases, unit: '1' });
  const share = (all: readonly Codes[], ...codes: readonly PanFinding['code'][]) =>
    all.filter((own) => own.some((code) => codes.includes(code))).length / all.length;
  report({
    ...{ bench, figure: 'good pans that are accused', unit: '1', atMost: 0.05 },
    value: share(accused, 'gathers-less', 'loses-more', 'contact-poorer', 'shaded'),
  });
  const found = (figure: string, ailment: Ailment, code: PanFinding['code']) =>
    report({ bench, figure, value: share(findings(ailment), code), unit: '1', atLeast: 0.9 });
  found('found: a tenth of the light lacks', ailments['a tenth of the light'], 'gathers-less');
  found('found: air below two fifths', ailments['air below two fifths'], 'contact-poorer');
  found(
    'found: shade that takes a quarter from 14 h on',
    ailments['a quarter of the light from 14 h on'],
    'shaded',
  );
}

type Codes = readonly PanFinding['code'][];

/** Of each loop that could be looked at. */
function findings(ailment: Ailment): readonly Codes[] {
  return sites.flatMap((site) =>
    Array.from({ length: seeds }, (_, index) => {
      const check = checkedPan({ site, seed: 101 + index, days: 24, ailingDays: 8, ailment });
      return check === undefined ? [] : [check.findings.map(({ code }) => code)];
    }).flat(),
  );
}
