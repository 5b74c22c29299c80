import { Button } from '@mantine/core';
import type { SweepReport } from '../../../../shared-types/tuning.ts';
import { editedNames, newDraft, withValues } from '../../setpoints/draft.ts';
import { putDraft } from '../../setpoints/draft-store.ts';
import type { FormPart } from '../../setpoints/form-part.ts';
import type { Route } from '../../shell/route.ts';
import { useAddress } from '../../shell/use-address.ts';
import { useChartLook } from '../../shell/use-formats.ts';
import { en } from '../../text/en.ts';
import { changeText, sameSettings } from '../changed-settings.ts';
import styles from '../tuning.module.css';
import { droppedEdits } from './dropped-edits.ts';
import many from './many.module.css';

const text = en.tuning.many;

interface Props {
  readonly site: string;
  readonly report: SweepReport;
  readonly part: FormPart;
  readonly index: number | null;
}

/** The combination that was chosen, and where one may go with it: to a day, or to the form that asks first. */
export function ChosenPoint({ site, report, part, index }: Props) {
  const address = useAddress();
  const { units } = useChartLook();
  const point = index === null ? undefined : report.points[index];
  const { inForce, draft } = part;
  const settings = { ...report.settingsInForce, ...point?.change };
  const go = (change: typeof report.settingsInForce, route: Route) => {
    putDraft(site, withValues(newDraft(inForce), change));
    window.location.hash = address(route);
  };
  const day = [...report.days].sort().at(-1) ?? null;
  const dropped = point === undefined ? 0 : droppedEdits(editedNames(draft), point.change);
  return (
    <section aria-label={text.chosenPoint} className={many['chosen']}>
      <h3>{text.chosenPoint}</h3>
      <p role="status">
        {point === undefined ? text.noneChosen : changeText(point.change, units.temperature, text.inForce)}
      </p>
      {point === undefined || index === 0 ? null : (
        <>
          <div className={many['buttons']}>
            <Button onClick={() => go(settings, { screen: 'replay', day, part: 'other' })}>
              {text.look}
            </Button>
            {sameSettings(settings, inForce) ? null : (
              <Button variant="default" onClick={() => go(settings, { screen: 'setpoints' })}>
                {text.take}
              </Button>
            )}
          </div>
          <p className={styles['soft']}>
            {text.takes} {dropped === 0 ? '' : text.replaces(dropped)}
          </p>
        </>
      )}
    </section>
  );
}
