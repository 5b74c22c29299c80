import { Button } from '@mantine/core';
import { useId, useMemo } from 'react';
import type { DayCurves } from '../../../shared-types/log.ts';
import { mergedPhases } from '../charts/merged-phases.ts';
import { useTimes } from '../shell/use-formats.ts';
import { en } from '../text/en.ts';
import { nearestIndex, phaseAt, phaseEdge } from './scrub.ts';
import styles from './scrub-controls.module.css';

const text = en.replay.scrub;
const hourMs = 3_600_000;

interface Props {
  readonly curves: DayCurves;
  readonly index: number;
  readonly onIndex: (index: number) => void;
}

/** A slider over the instants of the day, and buttons for steps of every size. */
export function ScrubControls({ curves, index, onIndex }: Props) {
  const id = useId();
  const times = useTimes();
  const last = curves.atMs.length - 1;
  const atMs = curves.atMs[index] ?? 0;
  const go = (next: number) => onIndex(Math.min(last, Math.max(0, next)));
  const goTo = (tMs: number | undefined) => {
    if (tMs !== undefined) go(nearestIndex(curves.atMs, tMs));
  };
  const phases = useMemo(() => mergedPhases(curves.phases), [curves]);
  const phase = phaseAt(curves.phases, atMs)?.phase;
  return (
    <div>
      <label htmlFor={id} className="visually-hidden">
        {text.slider}
      </label>
      <input
        id={id}
        type="range"
        className={styles['slider']}
        min={0}
        max={last}
        value={index}
        aria-valuetext={`${times.clockWithSeconds(atMs)}, ${phase === undefined ? text.noPhase : en.phases[phase]}`}
        onChange={(event) => go(Number(event.currentTarget.value))}
      />
      <div className={styles['steps']}>
        <Step label={text.previousPhase} onStep={() => goTo(phaseEdge(phases, atMs, 'previous'))} />
        <Step label={text.backHour} onStep={() => goTo(atMs - hourMs)} />
        <Step label={text.back} onStep={() => go(index - 1)} />
        <Step label={text.forward} onStep={() => go(index + 1)} />
        <Step label={text.forwardHour} onStep={() => goTo(atMs + hourMs)} />
        <Step label={text.nextPhase} onStep={() => goTo(phaseEdge(phases, atMs, 'next'))} />
      </div>
    </div>
  );
}

function Step({ label, onStep }: { readonly label: string; readonly onStep: () => void }) {
  return (
    <Button size="xs" variant="default" onClick={onStep}>
      {label}
    </Button>
  );
}
