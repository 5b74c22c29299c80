import { litSteps } from '../../../shared-types/absorbed.ts';
import { settingNames } from '../../../shared-types/settings.ts';
import type { Comparison, DayOutcome, Estimate } from '../../../shared-types/tuning.ts';
import { localTime } from '../remarks.ts';

interface Row {
  readonly title: string;
  readonly unit: string;
  readonly logged: (logged: Comparison['logged']) => number | null;
  readonly side: (outcome: DayOutcome) => Estimate | null;
  /** What a number is divided by, and digits behind the point. */
  readonly over: number;
  readonly digits: number;
}

const kWhJ = 3.6e6;
const none = () => null;

const rows: readonly Row[] = [
  {
    title: 'Net heat home',
    unit: 'kWh',
    logged: (l) => l.heatHomeJ,
    side: (o) => o.heatHomeJ,
    over: kWhJ,
    digits: 2,
  },
  {
    title: 'Electricity',
    unit: 'kWh',
    logged: (l) => l.electricityJ,
    side: (o) => o.electricityJ,
    over: kWhJ,
    digits: 3,
  },
  { title: 'Pump ran', unit: 'h', logged: (l) => l.pumpRunS, side: (o) => o.pumpRunS, over: 3600, digits: 2 },
  { title: 'Starts', unit: '', logged: (l) => l.starts, side: (o) => o.starts, over: 1, digits: 0 },
  { title: 'Fills', unit: '', logged: (l) => l.fills, side: (o) => o.fills, over: 1, digits: 0 },
  { title: 'Above freezing', unit: 'K', logged: none, side: (o) => o.aboveFreezingK, over: 1, digits: 1 },
  {
    title: 'Below liner limit',
    unit: 'K',
    logged: none,
    side: (o) => o.belowLinerLimitK,
    over: 1,
    digits: 1,
  },
];

const widths = [18, 9, 26, 26] as const;

/** The comparison for people. */
export function comparisonText(comparison: Comparison, timeZone: string): string {
  const { logged, base, tried, loop, leftGround, remarks } = comparison;
  return [
    headline(comparison),
    '',
    `  ${changes(comparison)}`,
    '',
    inColumns(['', 'logged', 'lived again', 'tried']),
    ...rows.map((row) =>
      `${inColumns([
        row.title,
        numberText(row.logged(logged), row),
        bandText(row.side(base), row),
        bandText(row.side(tried), row),
      ])} ${row.unit}`.trimEnd(),
    ),
    ...shareLines(comparison),
    '',
    loop.text,
    worldText(comparison.world),
    ...absorbedLines(comparison, timeZone),
    ...section(
      'Where the log cannot vouch for it:',
      leftGround.map(
        ({ fromMs, toMs, text }) => `${localTime(fromMs, timeZone)} to ${localTime(toMs, timeZone)}: ${text}`,
      ),
    ),
    ...section('Remarks:', remarks),
  ].join('\n');
}

function headline({ day, heatGainJ }: Comparison): string {
  const gain = `${signed(heatGainJ.value)} kWh of heat (${signed(heatGainJ.low)} to ${signed(heatGainJ.high)})`;
  const clear = heatGainJ.low > 0 || heatGainJ.high < 0;
  return `${day}: ${gain} under the tried settings${clear ? '' : '; that may be nothing'}.`;
}

const signed = (joules: number) => `${joules < 0 ? '-' : '+'}${(Math.abs(joules) / kWhJ).toFixed(2)}`;

function changes({ settingsThen, settingsTried }: Comparison): string {
  const changed = settingNames.filter((name) => settingsThen[name] !== settingsTried[name]);
  if (changed.length === 0) return 'Nothing is changed.';
  return changed.map((name) => `${name} ${settingsThen[name]} -> ${settingsTried[name]}`).join(', ');
}

const inColumns = (texts: readonly string[]) =>
  `  ${texts.map((text, i) => (i === 0 ? text.padEnd(widths[i] ?? 0) : text.padStart(widths[i] ?? 0))).join('')}`;

function numberText(value: number | null, { over, digits }: Row): string {
  return value === null ? '' : (value / over).toFixed(digits);
}

function bandText(estimate: Estimate | null, row: Row): string {
  if (estimate === null) return '-';
  const [value, low, high] = [estimate.value, estimate.low, estimate.high].map((number) =>
    numberText(number, row),
  );
  return low === high ? `${value}` : `${value} (${low} to ${high})`;
}

function shareLines({ bestPossibleJ, base, tried }: Comparison): string[] {
  if (bestPossibleJ === null || bestPossibleJ <= 0) return [];
  const share = ({ heatHomeJ }: DayOutcome) => `${((100 * heatHomeJ.value) / bestPossibleJ).toFixed(0)} %`;
  return [
    `${inColumns(['Share of the best', '', share(base), share(tried)])} of ${(bestPossibleJ / kWhJ).toFixed(2)} kWh`,
  ];
}

function worldText(world: Comparison['world']): string {
  const parts = Map.groupBy(Object.entries(world), ([, origin]) => origin);
  const told = [...parts].map(([origin, names]) => `${names.map(([name]) => name).join(', ')} ${origin}`);
  return `The world of the day: ${told.join('; ')}.`;
}

function absorbedLines({ absorbed }: Comparison, timeZone: string): string[] {
  if (absorbed === null) return [];
  const lines = litSteps(absorbed).map(({ fromMs, toMs, value, low, high }) => {
    const [from, to] = [fromMs, toMs].map((atMs) => localTime(atMs, timeZone));
    return `${from} to ${to}: ${value.toFixed(0)} (${low.toFixed(0)} to ${high.toFixed(0)})`;
  });
  return section('Light that the sheet took up, by the heat balance of the pan [W/m2]:', lines);
}

function section(title: string, lines: readonly string[]): string[] {
  return lines.length === 0 ? [] : ['', title, ...lines.map((line) => `  - ${line}`)];
}
