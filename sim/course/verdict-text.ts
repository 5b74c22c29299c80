import { type Runner, runners, shareOfBest, type Verdict } from './verdict.ts';

const nameWidth = 28;
const kWh = (joules: number, digits = 2) => (joules / 3.6e6).toFixed(digits);

const titles: Readonly<Record<Runner, string>> = {
  engine: 'engine',
  thermostat: 'thermostat 8/4',
  emptyingThermostat: 'thermostat 8/4, emptying',
};

/** Widths of harvest [kWh], share of the best, fills, starts and electricity [Wh]. */
const widths = [7, 9, 4, 4, 6] as const;

const inColumns = (...texts: readonly string[]) =>
  texts.map((text, column) => text.padStart(widths[column] ?? 0)).join('');

/** Two lines that name the columns of `verdictText`; `f` for fills, `s` for starts of the pump. */
export function headText(): string {
  const names = inColumns('kWh', 'share', 'f', 's', 'Wh');
  const line = (cell: (runner: Runner) => string, last: string) =>
    [''.padEnd(nameWidth), ...runners.map(cell), last].join(' | ');
  return [
    line((runner) => titles[runner].padEnd(names.length), 'best kWh'),
    line(() => names, 'bound, achieved'),
  ].join('\n');
}

/** A run on one line, for people. */
export function verdictText(verdict: Verdict): string {
  const { run, best } = verdict;
  const cells = runners.map((runner) => cellOf(verdict, runner));
  return [run.padEnd(nameWidth), ...cells, `${kWh(best.boundJ)} ${kWh(best.achievedJ)}`].join(' | ');
}

function cellOf(verdict: Verdict, runner: Runner): string {
  const { harvestJ, fills, starts, electricityJ } = verdict.results[runner];
  const share = `${(100 * shareOfBest(verdict, runner)).toFixed(1)} %`;
  return inColumns(kWh(harvestJ), share, String(fills), String(starts), (electricityJ / 3600).toFixed(0));
}
