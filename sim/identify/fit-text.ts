import type { LoopFit } from '../../shared-types/tuning.ts';

/** The fit for people. */
export function fitText(fit: LoopFit): string {
  const days =
    fit.days.length === 1 ? fit.days[0] : `${fit.days.length} days, ${fit.days[0]} to ${fit.days.at(-1)}`;
  if (!fit.converged) return [`${fit.site}, ${days}: no fit.`, ...listed(fit.verdicts)].join('\n');
  return [
    `${fit.site}, ${days}`,
    '',
    `  ${'Parameter'.padEnd(20)}${'value'.padStart(10)}${'error'.padStart(10)}`,
    ...fit.parameters.map(({ name, value, standardError, unit }) => {
      const error = standardError === null ? 'held' : standardError.toPrecision(2);
      return `  ${name.padEnd(20)}${value.toPrecision(4).padStart(10)}${error.padStart(10)} ${unit}`.trimEnd();
    }),
    ...sensorLines(fit),
    '',
    `  ${'Left over'.padEnd(20)}${'rms'.padStart(10)}${'mean'.padStart(10)}${'lag one'.padStart(10)}${'times'.padStart(8)}`,
    ...fit.residuals.map(
      ({ channel, rms, mean, lagOneCorrelation, samples }) =>
        `  ${channel.padEnd(20)}${rms.toFixed(3).padStart(10)}${mean.toFixed(3).padStart(10)}` +
        `${lagOneCorrelation.toFixed(2).padStart(10)}${String(samples).padStart(8)}`,
    ),
    '',
    'What the days tell:',
    ...listed(fit.verdicts),
  ].join('\n');
}

function sensorLines({ sensorErrors }: LoopFit): string[] {
  if (sensorErrors.length === 0) return [];
  return [
    '',
    `  ${'Shown too much'.padEnd(20)}${'value'.padStart(10)}${'error'.padStart(10)}`,
    ...sensorErrors.map(({ channel, kind, value, standardError }) => {
      const [shown, error, unit] =
        kind === 'share' ? [100 * value, 100 * standardError, '%'] : [value, standardError, ''];
      return `  ${channel.padEnd(20)}${shown.toFixed(2).padStart(10)}${error.toPrecision(2).padStart(10)} ${unit}`.trimEnd();
    }),
  ];
}

const listed = (lines: readonly string[]) => lines.map((text) => `  - ${text}`);
