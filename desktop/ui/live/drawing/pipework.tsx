import type { Site } from '../../../../shared-types/site.ts';
import { selectFlowMoves, useChoices } from '../../store/choices-store.ts';
import { useLive } from '../../store/live-store.ts';
import {
  selectDrainDiffers,
  selectDraining,
  selectDrainOpen,
  selectDrainPumpOn,
  selectExchanging,
  selectFlowing,
  selectHeatDumpOn,
  selectPumpDiffers,
  selectPumpFraction,
} from '../../store/output-selectors.ts';
import type { Point } from '../elevation.ts';
import { onLongest, type Pipes, pathThrough } from '../pipes.ts';
import styles from './drawing.module.css';

/** Pipes, pump and drain. What flows shows arrows; they move where that is wanted. */
export function Pipework({ pipes, site }: { readonly pipes: Pipes; readonly site: Site }) {
  const flowing = useLive(selectFlowing);
  const draining = useLive(selectDraining);
  const back = draining && site.drain === 'pump-stop';
  return (
    <g>
      {/* Where stopping the pump empties the pan, its water comes back the way that it went. */}
      <Pipe points={back ? [...pipes.feed].reverse() : pipes.feed} flows={flowing || back} />
      <Pipe points={pipes.back} flows={flowing || (back && site.outlet === 'low')} />
      {pipes.exchanger === undefined ? null : <Exchanger pipes={pipes.exchanger} />}
      {pipes.drain === undefined ? null : <Pipe points={pipes.drain} flows={draining} />}
      {pipes.valve === undefined ? null : <Valve at={pipes.valve} drain={site.drain} />}
      {pipes.radiator === undefined ? null : <Radiator at={pipes.radiator} />}
      <Pump at={pipes.pump} />
    </g>
  );
}

function Pipe({ points, flows }: { readonly points: readonly Point[]; readonly flows: boolean }) {
  const moves = useChoices(selectFlowMoves);
  const path = pathThrough(points);
  return (
    <>
      <path d={path} className={styles['pipe']} />
      <path d={path} className={styles['bore']} />
      {flows ? <path d={path} className={`${styles['flow']} ${moves ? styles['moving'] : ''}`} /> : null}
      {flows ? <Arrow points={points} /> : null}
    </>
  );
}

/** An arrow head half-way along the longest straight stretch: direction without movement. */
function Arrow({ points }: { readonly points: readonly Point[] }) {
  const { at, angleDeg } = onLongest(points, 0.38);
  return (
    <path
      d="M-7 -7L7 0L-7 7Z"
      transform={`translate(${at.x} ${at.y}) rotate(${angleDeg})`}
      className={styles['arrow']}
    />
  );
}

function Exchanger({ pipes }: { readonly pipes: NonNullable<Pipes['exchanger']> }) {
  const flows = useLive(selectExchanging);
  return (
    <>
      <Pipe points={pipes.warm} flows={flows} />
      <Pipe points={pipes.cool} flows={flows} />
    </>
  );
}

function Pump({ at }: { readonly at: Point }) {
  const running = useLive(selectPumpFraction) > 0;
  const differs = useLive(selectPumpDiffers);
  const look = running ? styles['pumpOn'] : styles['pumpOff'];
  return (
    <g transform={`translate(${at.x} ${at.y})`} className={differs ? `${look} ${styles['differs']}` : look}>
      <circle r="13" className={styles['pump']} />
      <path d="M5 -8L-9 0L5 8Z" className={styles['impeller']} />
    </g>
  );
}

function Valve({ at, drain }: { readonly at: Point; readonly drain: Site['drain'] }) {
  const drainOpen = useLive(selectDrainOpen);
  const drainPumpOn = useLive(selectDrainPumpOn);
  const open = drain === 'drain-pump' ? drainPumpOn : drainOpen;
  const differs = useLive(selectDrainDiffers);
  const look = open ? styles['valveOpen'] : styles['valveShut'];
  return (
    <path
      d="M-8 -9H8L-8 9H8Z"
      transform={`translate(${at.x} ${at.y})`}
      className={differs ? `${look} ${styles['differs']}` : look}
    />
  );
}

/** Fins across the return, in the colour of a running pump while heat goes to the air. */
function Radiator({ at }: { readonly at: Point }) {
  const on = useLive(selectHeatDumpOn);
  return (
    <path
      d="M-12 -10H12V10H-12ZM-6 -10V10M0 -10V10M6 -10V10"
      transform={`translate(${at.x} ${at.y})`}
      className={on ? styles['radiatorOn'] : styles['radiatorOff']}
    />
  );
}
