import { settingTitle, settingUnitSymbols } from '../../../../shared-types/setting-title.ts';
import { type SettingName, settingDeclarations, settingNames } from '../../../../shared-types/settings.ts';
import type { SweepReport } from '../../../../shared-types/tuning.ts';
import { type CsvCell, rounded } from '../../format/csv.ts';
import { heatIn, type Units } from '../../format/units.ts';
import { en } from '../../text/en.ts';

const { columns, onFront } = en.tuning.many;
const ends = en.tuning.other.columns;

/** A sweep as a table: a row a combination, in the units of the setpoints' table and the chosen one for heat. */
export function sweepTable(
  { points, settingsInForce }: SweepReport,
  { heat: unit }: Units,
): readonly (readonly CsvCell[])[] {
  const varied = settingNames.filter((name) => points.some(({ change }) => change[name] !== undefined));
  const heat = (valueJ: number) => rounded(heatIn(unit, valueJ), 4);
  const ofHeat = (title: string) => `${title} [${unit}]`;
  const margin = (value: number | null) => (value === null ? null : rounded(value, 3));
  return [
    [
      ...varied.map(headOf),
      ofHeat(columns.gain),
      ofHeat(`${columns.gain}, ${ends.low}`),
      ofHeat(`${columns.gain}, ${ends.high}`),
      ofHeat(columns.heat),
      columns.starts,
      columns.fills,
      ofHeat(columns.electricity),
      `${columns.frost} [K]`,
      `${columns.liner} [K]`,
      `${columns.beyondLog} [h]`,
      columns.front,
    ],
    ...points.map((point) => [
      ...varied.map((name) => point.change[name] ?? settingsInForce[name]),
      heat(point.heatGainJ.value),
      heat(point.heatGainJ.low),
      heat(point.heatGainJ.high),
      heat(point.heatHomeJ.value),
      rounded(point.starts, 3),
      rounded(point.fills, 3),
      heat(point.electricityJ),
      margin(point.aboveFreezingK),
      margin(point.belowLinerLimitK),
      rounded(point.beyondLogS / 3600, 2),
      point.onFront ? onFront : '',
    ]),
  ];
}

function headOf(name: SettingName): string {
  const symbol = settingUnitSymbols[settingDeclarations[name].unit];
  return symbol === '' ? settingTitle(name) : `${settingTitle(name)} [${symbol}]`;
}
