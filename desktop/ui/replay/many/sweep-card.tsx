import { Button } from '@mantine/core';
import { type Settings, settingNames } from '../../../../shared-types/settings.ts';
import type { TemperatureUnit } from '../../format/units.ts';
import { Card } from '../../shell/card.tsx';
import { useFeed } from '../../shell/feed-context.ts';
import { JobLine } from '../../shell/job-line.tsx';
import { selectLookOnly } from '../../store/live-selectors.ts';
import { useLive } from '../../store/live-store.ts';
import type { SweepRun } from '../../store/tuning-store.ts';
import { en } from '../../text/en.ts';
import styles from '../tuning.module.css';
import { DaysChoice } from './days-choice.tsx';
import { combinations, newRange, type RangeDraft } from './range-draft.ts';
import { RangeRow } from './range-row.tsx';
import type { SweepPlan } from './read-sweep.ts';
import type { SweepForm } from './sweep-form.ts';

const text = en.tuning.many;

/** As many as a trade-off can still be looked through. The host takes no more either. */
const mostRanges = 3;

interface Props {
  readonly site: string;
  readonly form: SweepForm;
  readonly plan: SweepPlan;
  readonly run: SweepRun | null;
  readonly inForce: Settings;
  readonly temperature: TemperatureUnit;
  readonly onForm: (form: SweepForm) => void;
}

/** Which setpoints from where to where, over which days, and the button that tries them. */
export function SweepCard({ site, form, plan, run, inForce, temperature, onForm }: Props) {
  const feed = useFeed();
  const lookOnly = useLive(selectLookOnly);
  const { ranges } = form;
  const put = (next: readonly RangeDraft[]) => onForm({ ...form, ranges: next });
  const unused = settingNames.find((name) => !ranges.some(({ setting }) => setting === name));
  if (lookOnly)
    return (
      <Card heading={text.over}>
        <p className={styles['soft']}>{text.lookOnly}</p>
      </Card>
    );
  return (
    <Card heading={text.over}>
      <div className={styles['stack']}>
        <p className={styles['soft']}>{text.overLead}</p>
        {ranges.map((draft, index) => (
          <RangeRow
            // biome-ignore lint/suspicious/noArrayIndexKey: rows have no name of their own, and may name the same setpoint
            key={index}
            draft={draft}
            faults={plan.rows[index]?.faults ?? {}}
            inForce={inForce}
            temperature={temperature}
            onDraft={(next) => put(ranges.with(index, next))}
            onRemove={ranges.length === 1 ? undefined : () => put(ranges.toSpliced(index, 1))}
          />
        ))}
        {ranges.length >= mostRanges || unused === undefined ? null : (
          <div>
            <Button
              variant="default"
              size="compact-sm"
              onClick={() => put([...ranges, newRange(unused, inForce, temperature)])}
            >
              {text.add}
            </Button>
          </div>
        )}
        <DaysChoice form={form} fault={plan.countFault} onForm={onForm} />
        <p role="status">
          {plan.fault ?? (plan.ready ? text.chosen(combinations(plan.ranges), plan.days.length) : '')}
        </p>
        <div>
          <Button
            disabled={!plan.ready || run?.outcome.state === 'running'}
            onClick={() => void feed.sweep(site, plan.days, plan.ranges)}
          >
            {text.run}
          </Button>
          <JobLine outcome={run?.outcome} onCancel={() => feed.cancelSweep()} />
          {run?.outcome.state === 'running' ? <p className={styles['soft']}>{text.resume}</p> : null}
        </div>
      </div>
    </Card>
  );
}
