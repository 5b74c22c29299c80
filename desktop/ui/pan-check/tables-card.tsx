import type { PanCheck } from '../../../shared-types/pan-check.ts';
import { csvText } from '../format/csv.ts';
import { SaveTable } from '../replay/save-table.tsx';
import tuning from '../replay/tuning.module.css';
import { Card } from '../shell/card.tsx';
import { useChartLook } from '../shell/use-formats.ts';
import { en } from '../text/en.ts';
import { wholeSpan } from './day-outline.ts';
import { DayRows } from './day-rows.tsx';
import { GroupRows } from './group-rows.tsx';
import { dayTable, groupTable } from './pan-csv.ts';

const text = en.panCheck.table;

/** The groups, and folded every day, as tables and as files. */
export function TablesCard({ check }: { readonly check: PanCheck }) {
  const { units } = useChartLook();
  const name = [check.site, ...wholeSpan(check), 'pan'];
  return (
    <Card heading={text.groups}>
      <div className={tuning['stack']}>
        <GroupRows check={check} />
        <div className={tuning['row']}>
          <SaveTable
            label={text.groupsCsv}
            nameParts={[...name, 'groups']}
            table={() => csvText(groupTable(check))}
          />
          <SaveTable
            label={text.daysCsv}
            nameParts={[...name, 'days']}
            table={() => csvText(dayTable(check, units))}
          />
        </div>
        <DayRows check={check} />
      </div>
    </Card>
  );
}
