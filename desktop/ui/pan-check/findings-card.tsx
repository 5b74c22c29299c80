import type { PanCheck, PanFinding } from '../../../shared-types/pan-check.ts';
import tuning from '../replay/tuning.module.css';
import { Card } from '../shell/card.tsx';
import { useNumbers, useTimes } from '../shell/use-formats.ts';
import { en } from '../text/en.ts';
import { findingSigns, lookOf } from './finding-look.ts';
import styles from './findings-card.module.css';
import { allBlocks, hoursOf } from './pan-groups.ts';
import { showsOf } from './pan-rows.ts';
import { spanText } from './span-text.ts';
import { usePanSentence } from './use-pan-sentence.ts';

const text = en.panCheck.found;

interface Props {
  readonly check: PanCheck;
  readonly asked: number;
  readonly old: boolean;
  readonly olderFit: boolean;
}

/** What the newest days tell of the pan, the gravest first, and what that rests on. */
export function FindingsCard({ check, asked, old, olderFit }: Props) {
  const times = useTimes();
  const show = showsOf(useNumbers());
  const { reference, days, findings } = check;
  const { fromDay, toDay } = allBlocks(check).at(-1) ?? reference;
  return (
    <Card heading={text.heading(spanText(fromDay, toDay, times.shortDay))}>
      <div className={tuning['stack']}>
        {old ? <p className={tuning['old']}>{en.panCheck.form.old}</p> : null}
        {olderFit ? <p className={tuning['old']}>{en.tuning.fit.older}</p> : null}
        <ul className={styles['findings']} aria-label={text.list}>
          {findings.map((finding) => (
            <Finding key={`${finding.code} ${finding.text}`} finding={finding} />
          ))}
        </ul>
        <p className={tuning['soft']}>
          {text.rests(
            spanText(reference.fromDay, reference.toDay, times.day),
            reference.days,
            show.hours(reference.hours),
          )}{' '}
          {text.usable(days.length, asked, show.hours(hoursOf(check)))}
        </p>
      </div>
    </Card>
  );
}

function Finding({ finding }: { readonly finding: PanFinding }) {
  const inUnits = usePanSentence();
  const look = lookOf(finding);
  return (
    <li className={`${styles['finding']} ${styles[look]}`} data-code={finding.code}>
      <span aria-hidden="true" className={styles['sign']}>
        {findingSigns[look]}
      </span>
      <div>
        <h3 className={styles['title']}>{text.titles[finding.code]}</h3>
        <p>{inUnits(finding.text)}</p>
      </div>
    </li>
  );
}
