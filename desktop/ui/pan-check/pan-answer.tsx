import type { PanCheck } from '../../../shared-types/pan-check.ts';
import tuning from '../replay/tuning.module.css';
import { Card } from '../shell/card.tsx';
import { en } from '../text/en.ts';
import { CoefficientsCard } from './coefficients-card.tsx';
import { DaysChartCard } from './days-chart-card.tsx';
import { FindingsCard } from './findings-card.tsx';
import { TablesCard } from './tables-card.tsx';
import { usePanSentence } from './use-pan-sentence.ts';

const text = en.panCheck;

interface Props {
  readonly check: PanCheck;
  /** Days that it was asked of. */
  readonly asked: number;
  /** True when it answers of other days than those that are now in the form. */
  readonly old: boolean;
  readonly olderFit: boolean;
}

/** What came of a check: the findings first, then what they rest on. */
export function PanAnswer({ check, asked, old, olderFit }: Props) {
  const inUnits = usePanSentence();
  return (
    <>
      <FindingsCard check={check} asked={asked} old={old} olderFit={olderFit} />
      <DaysChartCard check={check} />
      <CoefficientsCard check={check} />
      <TablesCard check={check} />
      {check.remarks.length === 0 ? null : (
        <Card heading={text.remarks}>
          <ul className={tuning['lines']}>
            {check.remarks.map((remark) => (
              <li key={remark}>{inUnits(remark)}</li>
            ))}
          </ul>
        </Card>
      )}
    </>
  );
}
