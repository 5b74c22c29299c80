import type { PanBlock, PanCheck, PanDay } from '../../shared-types/pan-check.ts';
import type { Estimate } from '../../shared-types/tuning.ts';

/** The check for people. */
export function panCheckText({ site, reference, blocks, days, findings, remarks }: PanCheck): string {
  return [
    `${site}: is the pan as good as it was?`,
    '',
    ...listed(findings.map(({ text }) => text)),
    '',
    `  ${'Days'.padEnd(25)}${'use'.padStart(4)}${'hours'.padStart(7)}${head('heat, %')}${head('efficiency')}${head('loss, W/m2K')}${head('contact, K m2/kW')}`,
    blockLine(reference),
    ...blocks.map(blockLine),
    '',
    `  ${'Day'.padEnd(12)}${'hours'.padStart(7)}${'measured'.padStart(10)}${'expected'.padStart(10)} kWh${head('heat, %')}`,
    ...days.map(dayLine),
    '',
    ...listed(remarks),
  ].join('\n');
}

const wide = 22;
const head = (text: string) => text.padStart(wide);
const listed = (lines: readonly string[]) => lines.map((text) => `  - ${text}`);

function blockLine({
  fromDay,
  toDay,
  days,
  hours,
  ratio,
  efficiency,
  lossWM2K,
  contactKM2W,
}: PanBlock): string {
  return (
    `  ${`${fromDay} to ${toDay}`.padEnd(25)}${String(days).padStart(4)}${hours.toFixed(1).padStart(7)}` +
    `${band(ratio, 100, 0)}${band(efficiency, 1, 3)}${band(lossWM2K, 1, 1)}${band(contactKM2W, 1000, 1)}`
  );
}

function dayLine({ day, hours, measuredJ, expectedJ, ratio }: PanDay): string {
  const kWh = (joules: number) => (joules / 3.6e6).toFixed(2).padStart(10);
  return `  ${day.padEnd(12)}${hours.toFixed(1).padStart(7)}${kWh(measuredJ)}${kWh(expectedJ)}    ${band(ratio, 100, 0)}`;
}

/** A value with the ends of its band. */
function band(estimate: Estimate | null, times: number, digits: number): string {
  if (estimate === null) return '-'.padStart(wide);
  const [value, low, high] = [estimate.value, estimate.low, estimate.high].map((one) =>
    (times * one).toFixed(digits),
  );
  return `${value} (${low} to ${high})`.padStart(wide);
}
