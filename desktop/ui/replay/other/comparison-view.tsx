import type { Comparison } from '../../../../shared-types/tuning.ts';
import { Card } from '../../shell/card.tsx';
import { useNumbers, useTimes } from '../../shell/use-formats.ts';
import { en } from '../../text/en.ts';
import { sameSettings } from '../changed-settings.ts';
import styles from '../tuning.module.css';
import { AbsorbedCard } from './absorbed-card.tsx';
import { ComparisonActions } from './comparison-actions.tsx';
import { ComparisonReport } from './comparison-report.tsx';
import { gainText } from './gain.ts';
import { GroundCard } from './ground-card.tsx';
import { RestsCard } from './rests-card.tsx';
import { SideTable } from './side-table.tsx';
import { TwoCurves } from './two-curves.tsx';

const text = en.tuning.other;

interface Props {
  readonly site: string;
  readonly comparison: Comparison;
  /** True when it answers another question than the one that is now in the form. */
  readonly old: boolean;
  readonly olderFit: boolean;
  /** True when the form holds nothing but what is in force. */
  readonly inForce: boolean;
}

/** A day under other setpoints: what came of it, on which ground, and what may be done with it. */
export function ComparisonView({ site, comparison, old, olderFit, inForce }: Props) {
  const numbers = useNumbers();
  const times = useTimes();
  const { day, settingsThen, settingsTried, heatGainJ } = comparison;
  return (
    <>
      <Card heading={text.result(times.day(day))}>
        <div className={styles['stack']}>
          {old ? <p className={styles['old']}>{text.old}</p> : null}
          {olderFit ? <p className={styles['old']}>{en.tuning.fit.older}</p> : null}
          <p role="status" className={styles['verdict']}>
            {gainText(heatGainJ, sameSettings(settingsThen, settingsTried), numbers)}
          </p>
          <SideTable comparison={comparison} />
          <ComparisonActions site={site} comparison={comparison} old={old} inForce={inForce} />
        </div>
      </Card>
      <Card heading={text.curves}>
        <TwoCurves comparison={comparison} />
      </Card>
      <div className={styles['pair']}>
        <GroundCard comparison={comparison} />
        <RestsCard comparison={comparison} />
      </div>
      <AbsorbedCard comparison={comparison} />
      <ComparisonReport site={site} comparison={comparison} olderFit={olderFit} />
    </>
  );
}
