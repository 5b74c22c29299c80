import { useElementSize } from '@mantine/hooks';
import type { PanCheck } from '../../../shared-types/pan-check.ts';
import { useNumbers, useTimes } from '../shell/use-formats.ts';
import { en } from '../text/en.ts';
import styles from './chart.module.css';
import { boxWithin } from './chart-box.ts';
import { DayMark } from './day-mark.tsx';
import { type DrawnDay, type DrawnGroup, dayOutline, wholeSpan } from './day-outline.ts';
import { namesMonths } from './day-ticks.ts';
import { LevelLines } from './level-lines.tsx';
import { allBlocks } from './pan-groups.ts';
import { showsOf } from './pan-rows.ts';
import { spanText } from './span-text.ts';

const text = en.panCheck.byDay;

const heightPx = 300;
const edge = { left: 52, right: 20, top: 28, bottom: 28 } as const;
/** Width below which the drawing shrinks instead. */
const leastPx = 260;
/** Marks are no wider than a day has room, within these [px]. */
const mark = { least: 2.5, most: 7 } as const;
/** Bands that stand closer than this are drawn fainter, or they would hide what lies among them [px]. */
const closePx = 4;

/** Ratios day by day with their bands, the groups behind them, and a line where the reference stands. */
export function DayChart({ check }: { readonly check: PanCheck }) {
  const { ref, width } = useElementSize();
  const wide = Math.max(leastPx, width);
  const box = boxWithin(wide, heightPx, edge);
  const label = useLabel(check);
  const titles = useTitles(check);
  const name = useDayName(check);
  const numbers = useNumbers();
  const { levels, oneY, days, groups, ticks, dayPx } = dayOutline(check, box);
  const size = Math.min(mark.most, Math.max(mark.least, 0.7 * dayPx));
  const [right, bottom] = [box.left + box.width, box.top + box.height];
  return (
    <div ref={ref}>
      <svg viewBox={`0 0 ${wide} ${heightPx}`} className={styles['chart']} role="img" aria-label={label}>
        <LevelLines box={box} levels={levels} show={numbers.percent} />
        {groups.map(({ fromX, toX, lowY, highY }) => (
          <rect
            key={fromX}
            className={styles['group']}
            x={fromX}
            y={highY}
            width={toX - fromX}
            height={lowY - highY}
          />
        ))}
        <path
          className={`${styles['band']} ${dayPx < closePx ? styles['faint'] : ''}`}
          d={days.map(bandLine).join('')}
        />
        <path className={styles['one']} d={`M${box.left} ${oneY}H${right}`} />
        <path className={styles['middle']} d={groups.map(middleLine).join('')} />
        {days.map(({ x, y, reference }, index) => (
          <DayMark key={x} x={x} y={y} size={size} reference={reference} title={titles[index] ?? ''} />
        ))}
        <ReferenceBracket group={groups[0]} y={box.top - 8} />
        {ticks.map(({ day, x }) => (
          <g key={day}>
            <path className={styles['tick']} d={`M${x} ${bottom}v5`} />
            <text x={x} y={bottom + 19} textAnchor="middle">
              {name(day)}
            </text>
          </g>
        ))}
      </svg>
    </div>
  );
}

const bandLine = ({ x, lowY, highY }: DrawnDay): string => `M${x.toFixed(1)} ${highY}V${lowY}`;

const middleLine = ({ fromX, toX, y }: DrawnGroup): string => `M${fromX} ${y}H${toX}`;

/** Names the days of the reference above them. */
function ReferenceBracket({ group, y }: { readonly group: DrawnGroup | undefined; readonly y: number }) {
  if (group === undefined) return null;
  return (
    <>
      <path className={styles['bracket']} d={`M${group.fromX + 1} ${y + 5}v-5H${group.toX - 1}v5`} />
      <text x={group.fromX} y={y - 5}>
        {en.panCheck.coefficients.reference}
      </text>
    </>
  );
}

/** Names of the axis: of days, or of months where the span is long. */
function useDayName(check: PanCheck): (day: string) => string {
  const times = useTimes();
  const months = namesMonths(...wholeSpan(check));
  return (day) => (months ? times.month(day.slice(0, 7)) : times.shortDay(day));
}

/** What each mark says to whoever points at it. */
function useTitles({ days }: PanCheck): readonly string[] {
  const { day: name } = useTimes();
  const show = showsOf(useNumbers());
  return days.map(({ day, ratio: { value, low, high } }) =>
    text.mark(name(day), show.ratio(value), en.tuning.band.range(show.ratio(low), show.ratio(high))),
  );
}

function useLabel(check: PanCheck): string {
  const times = useTimes();
  const show = showsOf(useNumbers());
  const blocks = allBlocks(check);
  const { reference, days } = check;
  const newest = blocks.at(-1) ?? reference;
  const span = spanText(...wholeSpan(check), times.day);
  return text.chart(days.length, span, show.ratio(reference.ratio.value), show.ratio(newest.ratio.value));
}
