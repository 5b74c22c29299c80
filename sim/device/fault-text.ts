import { z } from 'zod';
import { type Channel, channels } from '../../shared-types/channels.ts';
import { messageSchemaVersion } from '../../shared-types/messages.ts';
import { channelSchema } from '../../shared-types/readings.ts';
import { declarationOf, type Fault, type FaultName, faultNames } from '../plant/faults.ts';

/** A fault switched on or off over MQTT. Never retained. */
export const faultMessageSchema = z.strictObject({
  schema: z.literal(messageSchemaVersion),
  name: z.enum(faultNames),
  channel: channelSchema.optional(),
  /** In the fault's own unit; its default when absent. */
  size: z.number().optional(),
  active: z.boolean(),
});

/** A fault asked for on the command line, and the local minute of the day from which it is there. */
export interface FaultWish {
  readonly fault: Fault;
  readonly minuteOfDay: number | null;
}

type Checked<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly why: string };

/** Reads `NAME[:CHANNEL][@HH:MM][=SIZE]`. */
export function parseFaultWish(text: string): Checked<FaultWish> {
  const match = /^([a-z-]+)(?::(\w+))?(?:@([01]\d|2[0-3]):([0-5]\d))?(?:=(-?\d+(?:\.\d+)?))?$/.exec(text);
  if (match === null) return refused('the form is NAME[:CHANNEL][@HH:MM][=SIZE]');
  const [, name = '', channel, hour, minute, size] = match;
  const fault = checkFault(name, channel, size === undefined ? undefined : Number(size));
  if (!fault.ok) return fault;
  const minuteOfDay = hour === undefined ? null : Number(hour) * 60 + Number(minute);
  return { ok: true, value: { fault: fault.value, minuteOfDay } };
}

/** Puts name, channel and size together, if they belong together. */
export function checkFault(name: string, channel?: string, size?: number): Checked<Fault> {
  if (!isFaultName(name)) return refused(`no fault is called '${name}'; see --list-faults`);
  const declaration = declarationOf(name);
  if (channel !== undefined && !isChannel(channel)) return refused(`no channel is called '${channel}'`);
  if ((declaration.on === 'sensor') !== (channel !== undefined))
    return refused(declaration.on === 'sensor' ? `${name} needs a channel` : `${name} takes no channel`);
  if (size !== undefined && declaration.size === undefined) return refused(`${name} takes no size`);
  const chosen = size ?? declaration.size?.default ?? 0;
  if (name === 'half-flow' && (chosen < 0 || chosen > 1)) return refused('the size of half-flow is 0 to 1');
  return { ok: true, value: { name, size: chosen, ...(channel === undefined ? {} : { channel }) } };
}

/** One line a fault, for people. */
export function faultList(): string[] {
  return faultNames.map((name) => {
    const { on, meaning, size } = declarationOf(name);
    const form = on === 'sensor' ? `${name}:CHANNEL` : name;
    const sized = size === undefined ? '' : ` Size: ${size.unit}, ${size.default} unless said.`;
    return `${form.padEnd(24)} ${meaning}${sized}`;
  });
}

const refused = (why: string) => ({ ok: false, why }) as const;
const isFaultName = (text: string): text is FaultName => (faultNames as readonly string[]).includes(text);
const isChannel = (text: string): text is Channel => (channels as readonly string[]).includes(text);
