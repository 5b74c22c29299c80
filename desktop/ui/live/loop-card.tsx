import { Button } from '@mantine/core';
import { useElementSize, useReducedMotion } from '@mantine/hooks';
import type { Site } from '../../../shared-types/site.ts';
import { Card } from '../shell/card.tsx';
import { choose, selectFlowMoves, useChoices } from '../store/choices-store.ts';
import { selectSite } from '../store/live-selectors.ts';
import { useLive } from '../store/live-store.ts';
import { selectFlowing } from '../store/output-selectors.ts';
import { en } from '../text/en.ts';
import { DifferenceNote } from './difference-note.tsx';
import { type LabelName, labelNames, labelPlaces } from './drawing/label-places.ts';
import { type Elevation, elevationOf } from './elevation.ts';
import { loopSizes } from './elevation-parts.ts';
import styles from './loop-card.module.css';
import { LoopDrawing } from './loop-drawing.tsx';
import { pipesOf } from './pipes.ts';
import { ScaldCaution } from './scald-caution.tsx';
import { TemperatureLegend } from './temperature-legend.tsx';
import { LoopRow, SkyRow } from './value-row.tsx';

const text = en.live.drawing;
const mostHeightPx = 440;

/** The loop as it lies there: a side view drawn from the site file. */
export function LoopCard() {
  const site = useLive(selectSite);
  const { ref, width } = useElementSize();
  if (site === undefined) return null;
  const elevation = width > 0 ? elevationOf(loopSizes(site), width, mostHeightPx) : undefined;
  const stretch = elevation?.stretch ?? 1;
  return (
    <Card heading={text.heading} aside={<FlowSwitch />}>
      <SkyRow />
      <div ref={ref} className={styles['drawing']}>
        {elevation === undefined ? null : <LoopDrawing site={site} elevation={elevation} />}
      </div>
      <LoopRow site={site} names={elevation === undefined ? [] : unplaced(elevation, site)} />
      <DifferenceNote />
      <ScaldCaution />
      <div className={styles['foot']}>
        <p>
          {site.plumbing === 'reservoir' ? text.scaleWithReservoir : text.scale}{' '}
          {stretch > 1.05 ? text.stretched(stretch.toFixed(1)) : ''}
        </p>
        <TemperatureLegend />
      </div>
    </Card>
  );
}

/** What the drawing has no room for. */
function unplaced(elevation: Elevation, site: Site): readonly LabelName[] {
  const places = labelPlaces(elevation, pipesOf(elevation, site));
  return labelNames.filter((name) => places[name] === undefined);
}

/** Movement that goes on by itself can be stopped (WCAG 2.2.2). */
function FlowSwitch() {
  const moves = useChoices(selectFlowMoves);
  const flowing = useLive(selectFlowing);
  const reduced = useReducedMotion();
  if (!flowing || reduced) return null;
  return (
    <Button size="xs" variant="default" onClick={() => choose({ flowMoves: !moves })}>
      {moves ? text.pause : text.resume}
    </Button>
  );
}
