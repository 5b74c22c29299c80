import type { Channel } from '../../shared-types/channels.ts';
import type { PhaseName } from '../../shared-types/engine.ts';
import type { ChartedDay, Minute } from './live-day.ts';

const widthPx = 960;
const leftPx = 48;
const rightPx = 20;
const plotPx = widthPx - leftPx - rightPx;
const topPx = 44;
const curvesPx = 250;
const sunPx = 70;
const ribbonPx = 22;
const gapPx = 26;

const curves: readonly { readonly channel: Channel; readonly title: string; readonly colour: string }[] = [
  { channel: 'panSheetC', title: 'sheet', colour: '#7a3e00' },
  { channel: 'panOutletC', title: 'pan outlet', colour: '#c2410c' },
  { channel: 'storeBottomC', title: 'store bottom', colour: '#1d4ed8' },
  { channel: 'ambientC', title: 'air', colour: '#6b7280' },
];
const fills: Readonly<Record<PhaseName, string>> = {
  empty: '#f1f1ee',
  filling: '#a5b4fc',
  circulating: '#3b63c4',
  resting: '#d9c69a',
  emptying: '#94a3b8',
  stopped: '#7f1d1d',
};

const xOf = (hour: number) => leftPx + (hour / 24) * plotPx;
const text = (x: number, y: number, words: string, more = '') =>
  `<text x="${x.toFixed(1)}" y="${y.toFixed(1)}" ${more}>${words.replaceAll('&', '&amp;').replaceAll('<', '&lt;')}</text>`;
const line = (x1: number, y1: number, x2: number, y2: number) =>
  `<line x1="${x1.toFixed(1)}" y1="${y1.toFixed(1)}" x2="${x2.toFixed(1)}" y2="${y2.toFixed(1)}" stroke="#ddd"/>`;

/** The day as an SVG drawing: temperatures, sun, and below them what the controller did. */
export function drawDay({ title, day, minutes }: ChartedDay): string {
  const sunTopPx = topPx + curvesPx + gapPx;
  const ribbonTopPx = sunTopPx + sunPx + gapPx;
  const heightPx = ribbonTopPx + ribbonPx + 62;
  const heatKWh = Math.max(...minutes.map((minute) => minute.heatTodayKWh));
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${widthPx} ${heightPx}" font-family="sans-serif" font-size="12" fill="#222">`,
    `<title>${title}</title>`,
    `<rect width="${widthPx}" height="${heightPx}" fill="#fff"/>`,
    text(leftPx, 20, `${title}, ${day}: ${heatKWh.toFixed(1)} kWh metered home`, 'font-size="15"'),
    temperatures(minutes),
    sun(minutes, sunTopPx),
    ribbon(minutes, ribbonTopPx),
    '</svg>',
    '',
  ].join('\n');
}

function temperatures(minutes: readonly Minute[]): string {
  const known = curves.flatMap(({ channel }) => minutes.map(({ values }) => values[channel] ?? 0));
  const leastC = 10 * Math.floor(Math.min(...known) / 10);
  const mostC = 10 * Math.ceil(Math.max(...known) / 10);
  const yOf = (valueC: number) => topPx + curvesPx * (1 - (valueC - leastC) / (mostC - leastC));
  const parts: string[] = [];
  for (let valueC = leastC; valueC <= mostC; valueC += 10)
    parts.push(
      line(leftPx, yOf(valueC), leftPx + plotPx, yOf(valueC)),
      text(leftPx - 8, yOf(valueC) + 4, `${valueC}`, 'text-anchor="end"'),
    );
  curves.forEach(({ channel, title, colour }, index) => {
    parts.push(path(minutes, colour, ({ values }) => yOf(values[channel] ?? leastC)));
    parts.push(text(leftPx + 10 + 110 * index, topPx - 8, title, `fill="${colour}" font-weight="bold"`));
  });
  parts.push(text(leftPx + 10 + 110 * curves.length, topPx - 8, '°C'));
  return parts.join('\n');
}

function sun(minutes: readonly Minute[], sunTopPx: number): string {
  const yOf = (wattsM2: number) => sunTopPx + sunPx * (1 - Math.min(1, Math.max(0, wattsM2) / 1000));
  return [
    line(leftPx, yOf(0), leftPx + plotPx, yOf(0)),
    line(leftPx, yOf(1000), leftPx + plotPx, yOf(1000)),
    text(leftPx - 8, yOf(1000) + 4, '1000', 'text-anchor="end"'),
    text(leftPx + 10, sunTopPx + 14, 'sun in the plane of the pan [W/m2]', 'fill="#92700c"'),
    path(minutes, '#d4a017', ({ values }) => yOf(values.irradianceWM2 ?? 0)),
  ].join('\n');
}

function path(minutes: readonly Minute[], colour: string, yOf: (minute: Minute) => number): string {
  const points = minutes.map((minute) => `${xOf(minute.hour).toFixed(1)},${yOf(minute).toFixed(1)}`);
  return `<polyline points="${points.join(' ')}" fill="none" stroke="${colour}" stroke-width="1.5"/>`;
}

function ribbon(minutes: readonly Minute[], topY: number): string {
  const parts: string[] = [];
  for (let from = 0; from < minutes.length; ) {
    const phase = minutes[from]?.phase ?? 'empty';
    let to = from + 1;
    while (to < minutes.length && minutes[to]?.phase === phase) to++;
    const x = xOf(minutes[from]?.hour ?? 0);
    const endX = xOf(minutes[Math.min(to, minutes.length - 1)]?.hour ?? 24);
    parts.push(
      `<rect x="${x.toFixed(1)}" y="${topY}" width="${(endX - x).toFixed(1)}" height="${ribbonPx}" fill="${fills[phase]}"/>`,
    );
    from = to;
  }
  for (let hour = 0; hour <= 24; hour += 3)
    parts.push(text(xOf(hour), topY + ribbonPx + 16, `${hour} h`, 'text-anchor="middle"'));
  (Object.keys(fills) as PhaseName[]).forEach((phase, index) => {
    const x = leftPx + 10 + 120 * index;
    parts.push(
      `<rect x="${x}" y="${topY + ribbonPx + 30}" width="14" height="14" fill="${fills[phase]}" stroke="#999"/>`,
      text(x + 20, topY + ribbonPx + 42, phase),
    );
  });
  return parts.join('\n');
}
