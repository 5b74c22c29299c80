import type { DayCurves } from '../../../shared-types/log.ts';
import { CurvePanel } from '../charts/curve-panel.tsx';
import { mergedPhases } from '../charts/merged-phases.ts';
import { useDrawnSeries } from '../charts/use-drawn-series.ts';
import { Card } from '../shell/card.tsx';
import { LoadedView } from '../shell/loaded-view.tsx';
import { useTimes } from '../shell/use-formats.ts';
import { selectCurves, useHistory } from '../store/history-store.ts';
import { en } from '../text/en.ts';
import { DayEvents } from './day-events.tsx';
import { DayExport } from './day-export.tsx';
import { DayFacts } from './day-facts.tsx';
import { DayHead } from './day-head.tsx';
import { DayReport } from './day-report.tsx';
import styles from './one-day.module.css';
import { PhaseTable } from './phase-table.tsx';
import { useDayCurves } from './use-days.ts';

interface Props {
  readonly site: string;
  readonly day: string;
}

/** A day with all its curves, its phases and what happened. */
export function OneDay({ site, day }: Props) {
  const curves = useHistory(selectCurves(site, day));
  const load = useDayCurves(site, day);
  return (
    <div className={styles['day']}>
      <DayHead site={site} day={day} />
      <DayFacts site={site} day={day} />
      <LoadedView loaded={curves} onAgain={load}>
        {(loaded) => <Curves site={site} curves={loaded} />}
      </LoadedView>
    </div>
  );
}

function Curves({ site, curves }: { readonly site: string; readonly curves: DayCurves }) {
  const times = useTimes();
  const { names } = useDrawnSeries(curves);
  return (
    <>
      <Card heading={en.days.curves}>
        {curves.atMs.length < 2 ? (
          <p>{en.days.noCurves}</p>
        ) : (
          <CurvePanel
            curves={curves}
            label={`${en.days.curves}, ${times.day(curves.day)}`}
            zoomable
            pointable
          />
        )}
        <DayExport site={site} curves={curves} names={names} />
      </Card>
      <DayReport site={site} curves={curves} names={names} />
      <div className={styles['below']}>
        <Card heading={en.days.phases}>
          {curves.phases.length === 0 && curves.atMs.length > 0 ? (
            <p>{en.days.noPhases}</p>
          ) : (
            <PhaseTable phases={mergedPhases(curves.phases)} />
          )}
        </Card>
        <Card heading={en.days.events}>
          <DayEvents events={curves.events} />
        </Card>
      </div>
    </>
  );
}
