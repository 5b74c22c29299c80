import type { Commissioning, CommissioningResult } from '../../../../shared-types/commissioning.ts';
import { useSentence } from '../../shell/use-formats.ts';
import { en } from '../../text/en.ts';
import styles from './commissioning.module.css';

const text = en.commissioning;

const signs: Readonly<Record<CommissioningResult, string>> = { passed: '✓', failed: '×', 'by-hand': '?' };

interface Props {
  /** Stands before the list. */
  readonly lead: string;
  readonly findings: Commissioning['findings'];
}

/** What each check came to: sign, word and the sentence with its numbers. */
export function Findings({ lead, findings }: Props) {
  const inUnits = useSentence();
  return (
    <section className={styles['findings']}>
      <h3>{text.findings}</h3>
      {lead === '' ? null : <p>{inUnits(lead)}</p>}
      <ul>
        {findings.map(({ check, result, text: sentence }) => (
          <li key={check} className={styles[result]} data-check={check}>
            <p>
              <span aria-hidden="true" className={styles['sign']}>
                {signs[result]}
              </span>{' '}
              {text.checks[check]}: <strong>{text.results[result]}</strong>
            </p>
            <p className={styles['soft']}>{inUnits(sentence)}</p>
          </li>
        ))}
      </ul>
    </section>
  );
}
