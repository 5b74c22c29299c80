import { Button } from '@mantine/core';
import tuning from '../replay/tuning.module.css';
import { Card } from '../shell/card.tsx';
import { useFeed } from '../shell/feed-context.ts';
import { JobLine } from '../shell/job-line.tsx';
import type { PanCheckRun } from '../store/tuning-store.ts';
import { en } from '../text/en.ts';
import styles from './days-card.module.css';
import type { PanForm } from './pan-form.ts';
import type { PanPlan } from './read-pan-form.ts';
import { ReferenceChoice } from './reference-choice.tsx';
import { SpanFields } from './span-fields.tsx';

const text = en.panCheck.form;

interface Props {
  readonly site: string;
  readonly form: PanForm;
  readonly plan: PanPlan;
  readonly run: PanCheckRun | null;
  readonly onForm: (form: PanForm) => void;
}

/** Which days are looked at, which they are compared with, and the button that looks. */
export function DaysCard({ site, form, plan, run, onForm }: Props) {
  const feed = useFeed();
  const { days, referenceDays, fault } = plan;
  const reference = form.by === 'oldest' ? null : referenceDays.length;
  return (
    <Card heading={text.heading}>
      <div className={tuning['stack']}>
        <div className={styles['choices']}>
          <fieldset className={tuning['plain']}>
            <legend className={tuning['legend']}>{text.look}</legend>
            <div className={tuning['row']}>
              <SpanFields name={text.look} span={form.look} onSpan={(look) => onForm({ ...form, look })} />
            </div>
          </fieldset>
          <ReferenceChoice form={form} onForm={onForm} />
        </div>
        <p role="status">{fault ?? text.chosen(days.length, reference)}</p>
        <div>
          <Button
            disabled={fault !== null || run?.outcome.state === 'running'}
            onClick={() => void feed.panCheck(site, days, referenceDays)}
          >
            {text.run}
          </Button>
          <JobLine outcome={run?.outcome} onCancel={() => feed.cancelPanCheck()} />
        </div>
      </div>
    </Card>
  );
}
