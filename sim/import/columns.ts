import { type Channel, channelMeaning } from '../../shared-types/channels.ts';
import type { ImportMap } from '../../shared-types/foreign-log.ts';
import { type SensorUnit, sensorUnits } from '../../shared-types/sensor-units.ts';

/** A column of the file: its name and its place. */
export interface NamedColumn {
  readonly name: string;
  readonly index: number;
}

export interface ValueColumn extends NamedColumn {
  readonly channel: Channel;
  readonly unit: SensorUnit;
}

export interface PumpColumn extends NamedColumn {
  readonly unit: NonNullable<ImportMap['pump']>['unit'];
}

export interface Columns {
  readonly time: NamedColumn;
  readonly values: readonly ValueColumn[];
  readonly pump: PumpColumn | undefined;
  readonly drain: NamedColumn | undefined;
}

/** Channels that tell whether the pump ran, where no column does. */
const pumpTellers: readonly Channel[] = ['flowLMin', 'pumpPowerW'];

/** Finds the columns of the map in the header. @returns every fault of the map in words instead. */
export function columnsOf(header: readonly string[], map: ImportMap): Columns | readonly string[] {
  const faults: string[] = [];
  const find = (name: string): NamedColumn => {
    const index = header.indexOf(name);
    if (index < 0) faults.push(`no column is called '${name}'; there are: ${header.join(', ')}`);
    else if (header.lastIndexOf(name) !== index) faults.push(`two columns are called '${name}'`);
    return { name, index };
  };
  const { time, values, pump, drain } = map;
  const columns: Columns = {
    time: find(time.column),
    values: values.map(({ column, channel, unit }) => ({ ...find(column), channel, unit })),
    pump: pump === undefined ? undefined : { ...find(pump.column), unit: pump.unit },
    drain: drain === undefined ? undefined : find(drain.column),
  };
  faults.push(...mapFaults(map));
  return faults.length > 0 ? faults : columns;
}

/** What is wrong with a map whatever the file. */
function mapFaults({ values, pump }: ImportMap): string[] {
  const faults: string[] = [];
  for (const { channel, unit } of values)
    if (sensorUnits[unit].into !== channelMeaning[channel].unit)
      faults.push(`${channel} is not measured in ${unit}`);
  const named = values.map(({ channel }) => channel);
  for (const channel of new Set(named))
    if (named.indexOf(channel) !== named.lastIndexOf(channel)) faults.push(`two columns become ${channel}`);
  if (pump === undefined && !named.some((channel) => pumpTellers.includes(channel)))
    faults.push(
      'nothing tells when the pump ran: name the column of its state, of the flow, or of its power',
    );
  return faults;
}
