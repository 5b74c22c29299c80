import { useMemo } from 'react';
import { type CautionCode, cautions } from '../../../shared-types/cautions.ts';
import { Card } from '../shell/card.tsx';
import { useNumbers, useSentence, useTimes } from '../shell/use-formats.ts';
import { selectSite } from '../store/live-selectors.ts';
import { useLive } from '../store/live-store.ts';
import { en } from '../text/en.ts';
import { FactList } from './fact-list.tsx';
import styles from './facts-card.module.css';
import { siteFacts } from './site-facts.ts';

const text = en.site.facts;

/** What the site file says of the loop, each part with its cautions. */
export function FactsCard() {
  const site = useLive(selectSite);
  const numbers = useNumbers();
  const times = useTimes();
  const groups = useMemo(
    () => (site === undefined ? [] : siteFacts(site, numbers, times)),
    [site, numbers, times],
  );
  return (
    <Card heading={text.heading}>
      <p className={styles['soft']}>{text.lead}</p>
      <div className={styles['groups']}>
        {groups.map(({ name, facts, cautions: codes }) => (
          <section key={name}>
            <h3>{text.groups[name]}</h3>
            <FactList facts={facts} />
            {codes.map((code) => (
              <CautionNote key={code} code={code} />
            ))}
          </section>
        ))}
      </div>
    </Card>
  );
}

/** A caution, short; the whole of it on request. */
export function CautionNote({ code }: { readonly code: CautionCode }) {
  const inUnits = useSentence();
  const { title, text: words, source } = cautions[code];
  return (
    <details className={styles['caution']}>
      <summary>
        <span aria-hidden="true">!</span> {title}
      </summary>
      <p>{inUnits(words)}</p>
      <p className={styles['soft']}>{text.source(source)}</p>
    </details>
  );
}
