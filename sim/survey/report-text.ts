import type { Figure, Remark, Survey } from './report.ts';

const nameWidth = 50;
const valueWidth = 9;
const unitWidth = 7;

/** A number to three digits, as far as they mean something; whole above a thousand. */
export function figureText(value: number | null): string {
  if (value === null) return 'never';
  return Math.abs(value) >= 1000 ? value.toFixed(0) : String(Number(value.toPrecision(3)));
}

const line = ({ name, value, unit, why }: Figure) =>
  `  ${name.padEnd(nameWidth)}${figureText(value).padStart(valueWidth)} ${(unit === '1' ? '' : unit).padEnd(unitWidth)} ${why}`;

const block = (title: string, remarks: readonly Remark[]) =>
  remarks.length === 0 ? [] : [title, ...remarks.map(({ code, text }) => `  ${code}: ${text}`), ''];

/** The survey for people. */
export function surveyText({ site, title, sections, warnings, refusals }: Survey): string {
  return [
    `${title} (${site})`,
    '',
    ...sections.flatMap((section) => [section.title, ...section.figures.map(line), '']),
    ...block('To think over', warnings),
    ...block('Cannot be built', refusals),
  ]
    .join('\n')
    .trimEnd();
}
