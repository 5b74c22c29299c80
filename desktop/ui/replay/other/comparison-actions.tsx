import { Button } from '@mantine/core';
import type { Comparison } from '../../../../shared-types/tuning.ts';
import { csvText } from '../../format/csv.ts';
import { useAddress } from '../../shell/use-address.ts';
import { useChartLook } from '../../shell/use-formats.ts';
import { en } from '../../text/en.ts';
import { SaveTable } from '../save-table.tsx';
import styles from '../tuning.module.css';
import { comparisonTable } from './comparison-csv.ts';

const text = en.tuning.other;

interface Props {
  readonly site: string;
  readonly comparison: Comparison;
  /** True when the form holds other values by now: then it is not the way for these. */
  readonly old: boolean;
  /** True when nothing of it is left to apply. */
  readonly inForce: boolean;
}

/** What may be done with a comparison: the way to the controller leads over the form that asks first. */
export function ComparisonActions({ site, comparison, old, inForce }: Props) {
  const address = useAddress();
  const { units } = useChartLook();
  const offered = !old && !inForce;
  return (
    <div>
      <div className={styles['row']}>
        {offered ? (
          <Button component="a" href={address({ screen: 'setpoints' })}>
            {text.review}
          </Button>
        ) : null}
        <SaveTable
          label={text.table}
          nameParts={[site, comparison.day, 'comparison']}
          table={() => csvText(comparisonTable(comparison, units))}
        />
        <Button variant="default" onClick={() => window.print()}>
          {text.print}
        </Button>
      </div>
      {old ? null : <p className={styles['soft']}>{inForce ? text.inForce : text.reviewNote}</p>}
    </div>
  );
}
