import { useElementSize } from '@mantine/hooks';
import type { Estimate } from '../../../shared-types/tuning.ts';
import tuning from '../replay/tuning.module.css';
import { useTimes } from '../shell/use-formats.ts';
import { en } from '../text/en.ts';
import styles from './chart.module.css';
import { boxWithin } from './chart-box.ts';
import { DayMark } from './day-mark.tsx';
import { groupOutline } from './group-outline.ts';
import { LevelLines } from './level-lines.tsx';

const text = en.panCheck.coefficients;

interface Props {
  readonly title: string;
  /** The first day of each group, the reference first. */
  readonly days: readonly string[];
  readonly estimates: readonly (Estimate | null)[];
  /** Whole multiples of it bound the scale. */
  readonly step: number;
  readonly show: (value: number) => string;
  /** A round value beside the scale. */
  readonly level: (value: number) => string;
}

const heightPx = 190;
const edge = { left: 44, right: 12, top: 10, bottom: 28 } as const;
const leastPx = 240;
const markPx = 8;

/** One coefficient from group to group with its bands. */
export function GroupChart({ title, days, estimates, step, show, level }: Props) {
  const { ref, width } = useElementSize();
  const { shortDay } = useTimes();
  const there = estimates.filter((one) => one !== null);
  if (there.length === 0) return <Untold title={title} />;
  const wide = Math.max(leastPx, width);
  const box = boxWithin(wide, heightPx, edge);
  const bottom = box.top + box.height;
  const { levels, points, named } = groupOutline(estimates, step, box);
  const told = (one: Estimate | null | undefined) => (one ? show(one.value) : en.panCheck.table.notTold);
  return (
    <div ref={ref}>
      <h3>{title}</h3>
      <svg
        viewBox={`0 0 ${wide} ${heightPx}`}
        className={styles['chart']}
        role="img"
        aria-label={text.chart(title, days.length, told(estimates[0]), told(estimates.at(-1)))}
      >
        <LevelLines box={box} levels={levels} show={level} />
        {points.map(({ index, x, shown }) =>
          shown === null ? (
            <text key={index} x={x} y={bottom - 6} textAnchor="middle">
              {text.unknown}
            </text>
          ) : (
            <g key={index}>
              <path className={styles['bar']} d={`M${x} ${shown.highY}V${shown.lowY}`} />
              <DayMark x={x} y={shown.y} size={markPx} reference={index === 0} />
            </g>
          ),
        )}
        {named.map((index) => (
          <text key={index} x={points[index]?.x} y={bottom + 19} textAnchor="middle">
            {index === 0 ? text.reference : shortDay(days[index] ?? '')}
          </text>
        ))}
      </svg>
    </div>
  );
}

function Untold({ title }: { readonly title: string }) {
  return (
    <div>
      <h3>{title}</h3>
      <p className={tuning['soft']}>{text.none}</p>
    </div>
  );
}
