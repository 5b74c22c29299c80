import type { PanCheck } from '../../../shared-types/pan-check.ts';
import { Card } from '../shell/card.tsx';
import { en } from '../text/en.ts';
import { DayChart } from './day-chart.tsx';
import { DayLegend } from './day-legend.tsx';

/** Each day's heat over what the reference would have given. */
export function DaysChartCard({ check }: { readonly check: PanCheck }) {
  return (
    <Card heading={en.panCheck.byDay.heading}>
      <DayChart check={check} />
      <DayLegend />
    </Card>
  );
}
