import { Button } from '@mantine/core';
import { useState } from 'react';
import type { DayCurves } from '../../../shared-types/log.ts';
import type { Problem } from '../../../shared-types/monitor-api.ts';
import type { SaveOutcome } from '../../../shared-types/saved-text.ts';
import type { SeriesName } from '../charts/series.ts';
import { wholeSpan } from '../charts/whole-span.ts';
import { csvText, fileName } from '../format/csv.ts';
import { loadPart } from '../load-part.ts';
import { saveFile } from '../save-file.ts';
import { useFeed } from '../shell/feed-context.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import { useChartLook, useTimes } from '../shell/use-formats.ts';
import { selectSiteTitle } from '../store/live-selectors.ts';
import { useLive } from '../store/live-store.ts';
import { en } from '../text/en.ts';
import { dayTable } from './export-tables.ts';
import styles from './save-row.module.css';

const text = en.days.save;

interface Props {
  readonly site: string;
  readonly curves: DayCurves;
  readonly names: readonly SeriesName[];
}

type Said = { readonly text: string } | { readonly problem: Problem };

function saidOf(name: string, outcome: SaveOutcome): Said | undefined {
  if (outcome.kind === 'failed') return { problem: { severity: 'error', text: outcome.text } };
  return outcome.kind === 'saved' ? { text: text.saved(name) } : undefined;
}

/** Saves the day: every step as a table, the curves as a picture, or a page on paper. */
export function DayExport({ site, curves, names }: Props) {
  const feed = useFeed();
  const look = useChartLook();
  const times = useTimes();
  const title = useLive(selectSiteTitle) ?? site;
  const [said, setSaid] = useState<Said | undefined>(undefined);
  const save = async (extension: string, type: string, content: string | Blob) => {
    const name = fileName([site, curves.day], extension);
    setSaid(saidOf(name, await saveFile(name, type, content)));
  };
  const saveTable = async () => {
    setSaid({ text: text.fetching });
    const reply = await feed.wholeDay(site, curves.day);
    if (reply.ok) await save('csv', 'text/csv', csvText(dayTable(reply.result, look.timeZone, look.units)));
    else setSaid({ problem: reply.problem });
  };
  const savePicture = async () => {
    const { dayPicture } = await loadPart(() => import('../charts/day-picture.ts'));
    const chart = { curves, names, look: { ...look, scheme: 'light' as const }, span: wholeSpan(curves) };
    await save('png', 'image/png', await dayPicture(chart, { title, subtitle: times.day(curves.day) }));
  };
  return (
    <div>
      <div className={styles['row']}>
        <Button variant="default" onClick={() => void saveTable()}>
          {text.day}
        </Button>
        <Button variant="default" onClick={() => void savePicture()}>
          {text.picture}
        </Button>
        <Button variant="default" onClick={() => window.print()}>
          {text.print}
        </Button>
        <span role="status" className={styles['said']}>
          {said !== undefined && 'text' in said ? said.text : null}
        </span>
      </div>
      {said !== undefined && 'problem' in said ? <ProblemNote problem={said.problem} /> : null}
    </div>
  );
}
