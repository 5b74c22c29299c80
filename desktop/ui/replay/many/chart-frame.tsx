import { useNumbers } from '../../shell/use-formats.ts';
import { axisTicks } from './axis-ticks.ts';
import styles from './trade-off-chart.module.css';

/** Where a value stands in the drawing. */
interface Plane {
  readonly width: number;
  readonly height: number;
  readonly xSpan: readonly [number, number];
  readonly ySpan: readonly [number, number];
  readonly x: (value: number) => number;
  readonly y: (value: number) => number;
}

const heightPx = 340;
/** Room that a value on the axis needs beside the next. */
const pxPerTick = 75;
const edge = { left: 64, right: 14, top: 14, bottom: 50 };

/** @param width - Room that the page has for it [px]. */
export function chartPlane(
  width: number,
  xSpan: readonly [number, number],
  ySpan: readonly [number, number],
): Plane {
  const wide = width - edge.left - edge.right;
  const high = heightPx - edge.top - edge.bottom;
  return {
    width,
    height: heightPx,
    xSpan,
    ySpan,
    x: (value) => edge.left + (wide * (value - xSpan[0])) / (xSpan[1] - xSpan[0]),
    y: (value) => edge.top + high * (1 - (value - ySpan[0]) / (ySpan[1] - ySpan[0])),
  };
}

interface Props {
  readonly plane: Plane;
  /** Whether whole numbers stand along the lower edge. */
  readonly counted: boolean;
  readonly xTitle: string;
  readonly yTitle: string;
}

/** Axes of the trade-off with their titles and round values. Who cannot see it reads marks and table. */
export function ChartFrame({ plane, counted, xTitle, yTitle }: Props) {
  const numbers = useNumbers();
  const xTicks = axisTicks(...plane.xSpan, plane.width / pxPerTick, counted ? 1 : 0);
  const yTicks = axisTicks(...plane.ySpan, 8);
  const [left, right] = [edge.left, plane.width - edge.right];
  const [top, bottom] = [edge.top, plane.height - edge.bottom];
  const write = (value: number, ticks: readonly number[]) =>
    numbers.measure(value, digitsOf((ticks[1] ?? 1) - (ticks[0] ?? 0)), '').number;
  return (
    // biome-ignore lint/a11y/noAriaHiddenOnFocusable: nothing in it takes the focus
    <g aria-hidden="true">
      {yTicks.map((value) => (
        <g key={value}>
          <path
            d={`M${left} ${plane.y(value)}H${right}`}
            className={value === 0 ? styles['nought'] : styles['grid']}
          />
          <text x={left - 6} y={plane.y(value)} dy="0.35em" textAnchor="end">
            {write(value, yTicks)}
          </text>
        </g>
      ))}
      {xTicks.map((value) => (
        <g key={value}>
          <path d={`M${plane.x(value)} ${top}V${bottom}`} className={styles['grid']} />
          <text x={plane.x(value)} y={bottom + 18} textAnchor="middle">
            {write(value, xTicks)}
          </text>
        </g>
      ))}
      <text x={(left + right) / 2} y={plane.height - 8} textAnchor="middle">
        {xTitle}
      </text>
      <text transform={`translate(16 ${(top + bottom) / 2}) rotate(-90)`} textAnchor="middle">
        {yTitle}
      </text>
    </g>
  );
}

/** Digits after the point that tell two neighbours of a step apart. */
function digitsOf(step: number): number {
  if (!(step > 0)) return 0;
  return Math.max(0, Math.min(6, Math.ceil(-Math.log10(step) - 1e-9)));
}
