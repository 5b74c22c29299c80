import { useState } from 'react';
import type { DayCurves } from '../../../shared-types/log.ts';
import { CurvePanel } from '../charts/curve-panel.tsx';
import { Card } from '../shell/card.tsx';
import { useTimes } from '../shell/use-formats.ts';
import { en } from '../text/en.ts';
import { InstantValues } from './instant-values.tsx';
import { nearestIndex } from './scrub.ts';
import styles from './scrub-card.module.css';
import { ScrubControls } from './scrub-controls.tsx';

const text = en.replay.scrub;

/** The day's curves with an instant that can be moved through them, and all that held then. */
export function ScrubCard({ curves }: { readonly curves: DayCurves }) {
  const times = useTimes();
  const [index, setIndex] = useState(() => busiestIndex(curves));
  const atMs = curves.atMs[index] ?? 0;
  return (
    <Card heading={text.heading} aside={<span>{times.day(curves.day)}</span>}>
      <ScrubControls curves={curves} index={index} onIndex={setIndex} />
      <div className={styles['grid']}>
        <div className={styles['curves']}>
          <CurvePanel curves={curves} label={times.day(curves.day)} zoomable cursorMs={atMs} />
        </div>
        <InstantValues curves={curves} index={index} />
      </div>
    </Card>
  );
}

/** The walk begins where the pump first ran, or else in the middle of what was logged. */
function busiestIndex({ atMs, pumpFraction }: DayCurves): number {
  const running = pumpFraction.findIndex((fraction) => fraction > 0);
  if (running >= 0) return running;
  return nearestIndex(atMs, ((atMs[0] ?? 0) + (atMs.at(-1) ?? 0)) / 2);
}
