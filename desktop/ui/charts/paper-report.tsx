import type { ReactNode } from 'react';
import { createPortal } from 'react-dom';
import { selectSiteTitle } from '../store/live-selectors.ts';
import { useLive } from '../store/live-store.ts';
import styles from './paper-report.module.css';
import { type SeriesName, seriesTitle } from './series.ts';
import { SeriesSample } from './series-sample.tsx';

interface Props {
  readonly site: string;
  readonly children: ReactNode;
}

/** What is printed in place of the page, under the site's title. It stands beside the page and is seen by printers only. */
export function PaperReport({ site, children }: Props) {
  const title = useLive(selectSiteTitle) ?? site;
  return createPortal(
    <div className={styles['report']} data-report="" aria-hidden="true">
      <h1>{title}</h1>
      {children}
    </div>,
    document.body,
  );
}

/** Which line is which, in the colours for white paper. */
export function PaperKey({ names }: { readonly names: readonly SeriesName[] }) {
  return (
    <ul className={styles['key']}>
      {names.map((name) => (
        <li key={name}>
          <SeriesSample name={name} scheme="light" /> {seriesTitle(name)}
        </li>
      ))}
    </ul>
  );
}
