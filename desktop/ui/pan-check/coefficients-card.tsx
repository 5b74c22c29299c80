import type { PanCheck } from '../../../shared-types/pan-check.ts';
import tuning from '../replay/tuning.module.css';
import { Card } from '../shell/card.tsx';
import { useNumbers } from '../shell/use-formats.ts';
import { en } from '../text/en.ts';
import styles from './chart.module.css';
import { GroupChart } from './group-chart.tsx';
import { allBlocks } from './pan-groups.ts';
import { showsOf } from './pan-rows.ts';

const text = en.panCheck.coefficients;

/** Whole multiples of these bound the scales: of a share, and of a loss [W/m2K]. */
const steps = { efficiency: 0.05, loss: 1 } as const;

/** Efficiency and loss from group to group, each with its band. */
export function CoefficientsCard({ check }: { readonly check: PanCheck }) {
  const numbers = useNumbers();
  const show = showsOf(numbers);
  const blocks = allBlocks(check);
  const days = blocks.map(({ fromDay }) => fromDay);
  return (
    <Card heading={text.heading}>
      <p className={`${tuning['soft']} ${styles['lead']}`}>{text.lead}</p>
      <div className={styles['pair']}>
        <GroupChart
          title={text.efficiency}
          days={days}
          estimates={blocks.map(({ efficiency }) => efficiency)}
          step={steps.efficiency}
          show={show.efficiency}
          level={(value) => numbers.measure(value, 2, '').number}
        />
        <GroupChart
          title={en.panCheck.table.loss}
          days={days}
          estimates={blocks.map(({ lossWM2K }) => lossWM2K)}
          step={steps.loss}
          show={show.loss}
          level={(value) => numbers.measure(value, 0, '').number}
        />
      </div>
    </Card>
  );
}
