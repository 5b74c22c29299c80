import type { SweepPoint, SweepReport } from '../../../shared-types/tuning.ts';
import { changeText, hoursText, kWhText } from './words.ts';

const columns = [
  ['heat kWh', ({ heatHomeJ }) => kWhText(heatHomeJ.value)],
  ['gain kWh', ({ heatGainJ }) => kWhText(heatGainJ.value)],
  ['from', ({ heatGainJ }) => kWhText(heatGainJ.low)],
  ['to', ({ heatGainJ }) => kWhText(heatGainJ.high)],
  ['starts', ({ starts }) => String(starts)],
  ['fills', ({ fills }) => String(fills)],
  ['pump kWh', ({ electricityJ }) => kWhText(electricityJ)],
  ['frost K', ({ aboveFreezingK }) => kelvin(aboveFreezingK)],
  ['ice kg', ({ mostIceKg }) => mostIceKg.toFixed(1)],
  ['liner K', ({ belowLinerLimitK }) => kelvin(belowLinerLimitK)],
  ['beyond h', ({ beyondLogS }) => hoursText(beyondLogS)],
] as const satisfies [string, (point: SweepPoint) => string][];

const kelvin = (value: number | null) => (value === null ? '-' : value.toFixed(1));
const width = 10;

/** The report for people, as it can be printed: the front first, the most heat first. */
export function reportText(report: SweepReport): string {
  const { days, points, refused, advice, remarks } = report;
  const span = days.length === 1 ? days[0] : `${days.length} days, ${days[0]} to ${days.at(-1)}`;
  return [
    `${span}: ${points.length} sets of settings in a simulated loop. Nothing of this is applied.`,
    '',
    `  ${columns.map(([title]) => title.padStart(width)).join('')}   settings`,
    ...ordered(points).map((point) => line(point, points[0] as SweepPoint)),
    '  * no other set brings as much heat with no more starts, fills and electricity',
    '  beyond: how long the loop would have been where the log of its day never was; nothing vouches for it there',
    '',
    advice.text,
    ...section(
      'Refused:',
      refused.map(({ change, why }) => `${changeText(change)}: ${why}`),
    ),
    ...section('Remarks:', remarks),
  ].join('\n');
}

function ordered(points: readonly SweepPoint[]): SweepPoint[] {
  return points.toSorted(
    (a, b) => Number(b.onFront) - Number(a.onFront) || b.heatHomeJ.value - a.heatHomeJ.value,
  );
}

function line(point: SweepPoint, base: SweepPoint): string {
  const cells = columns.map(([, cell]) => cell(point).padStart(width)).join('');
  const words = point === base ? 'as they are' : changeText(point.change);
  return `${point.onFront ? '*' : ' '} ${cells}   ${words}`;
}

const section = (title: string, texts: readonly string[]) =>
  texts.length === 0 ? [] : ['', title, ...texts.map((text) => `  - ${text}`)];
