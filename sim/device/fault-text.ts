import { type Channel, channelMeaning, channels } from '../../shared-types/channels.ts';
import type { Site } from '../../shared-types/site.ts';
import { declarationOf, type Fault, type FaultName, faultNames } from '../plant/faults.ts';
import { type LocalMoment, parseMoment } from './local-moment.ts';

/** A fault before anybody knows how long it has been there. */
export type NamedFault = Omit<Fault, 'forS'>;

/** A fault asked for, and when it comes and goes; null: at once, and never. */
export interface FaultWish {
  readonly fault: NamedFault;
  readonly from: LocalMoment | null;
  readonly until: LocalMoment | null;
}

/** A fault as somebody wrote it. */
export interface WrittenFault {
  readonly name: string;
  readonly channel?: string | undefined;
  readonly other?: string | undefined;
  readonly size?: number | undefined;
  readonly from?: string | undefined;
  readonly until?: string | undefined;
}

type Refusal = { readonly ok: false; readonly at: keyof WrittenFault; readonly why: string };
type Checked<T> = { readonly ok: true; readonly value: T } | Refusal;

const wishForm = 'NAME[:CHANNEL[/OTHER]][@FROM][~UNTIL][=SIZE]';
const wishPattern =
  /^([a-z-]+)(?::(\w+)(?:\/(\w+))?)?(?:@([\dT:-]+))?(?:~([\dT:-]+))?(?:=(-?\d+(?:\.\d+)?))?$/;

/** Reads `NAME[:CHANNEL[/OTHER]][@FROM][~UNTIL][=SIZE]`, the times as HH:MM or YYYY-MM-DDTHH:MM. */
export function parseFaultWish(text: string): Checked<FaultWish> {
  const match = wishPattern.exec(text);
  if (match === null) return refused('name', `the form is ${wishForm}`);
  const [, name = '', channel, other, from, until, size] = match;
  return checkWish({
    name,
    channel,
    other,
    from,
    until,
    size: size === undefined ? undefined : Number(size),
  });
}

/** Checks whatever can be checked without knowing the site. */
export function checkWish(written: WrittenFault): Checked<FaultWish> {
  const fault = checkFault(written);
  if (!fault.ok) return fault;
  const from = momentOf(written.from);
  if (from === undefined) return refused('from', momentForm);
  const until = momentOf(written.until);
  if (until === undefined) return refused('until', momentForm);
  const dated = from?.date != null && until?.date != null;
  if (dated && (written.until ?? '') <= (written.from ?? ''))
    return refused('until', 'it ends after it came');
  return { ok: true, value: { fault: fault.value, from, until } };
}

const momentForm = 'a time is HH:MM or YYYY-MM-DDTHH:MM';
const momentOf = (text: string | undefined) => (text === undefined ? null : parseMoment(text));

/** Puts name, channels and size together, if they belong together. */
function checkFault({ name, channel, other, size }: WrittenFault): Checked<NamedFault> {
  if (!isFaultName(name)) return refused('name', `no fault is called '${name}'; see --list-faults`);
  const declaration = declarationOf(name);
  if (channel !== undefined && !isChannel(channel))
    return refused('channel', `no channel is called '${channel}'`);
  if (other !== undefined && !isChannel(other)) return refused('other', `no channel is called '${other}'`);
  const wrongChannels = channelsFault(name, channel, other);
  if (wrongChannels !== undefined) return wrongChannels;
  const range = declaration.size;
  if (size !== undefined && range === undefined) return refused('size', `${name} takes no size`);
  const chosen = size ?? range?.default ?? 0;
  if (range !== undefined && !(chosen >= range.least && chosen <= range.most))
    return refused('size', `the size of ${name} is ${range.least} to ${range.most} (${range.unit})`);
  return {
    ok: true,
    value: {
      name,
      size: chosen,
      ...(channel === undefined ? {} : { channel }),
      ...(other === undefined ? {} : { other }),
    },
  };
}

function channelsFault(name: FaultName, channel?: Channel, other?: Channel): Refusal | undefined {
  const { on } = declarationOf(name);
  const ofSensors = on === 'sensor' || on === 'two-sensors';
  if (ofSensors !== (channel !== undefined))
    return refused('channel', ofSensors ? `${name} needs a channel` : `${name} takes no channel`);
  if ((on === 'two-sensors') !== (other !== undefined))
    return refused(
      'other',
      other === undefined ? `${name} needs a second channel` : `${name} takes one channel`,
    );
  if (channel === undefined || other === undefined) return undefined;
  if (channel === other || channelMeaning[channel].unit !== channelMeaning[other].unit)
    return refused('other', `${name} needs two channels of one unit`);
  return undefined;
}

/** Why a loop of this site cannot have a fault, in words; undefined when it can. */
export function misfitOf(
  { name, channel, other }: NamedFault,
  site: Site,
  onSerialLine: boolean,
): string | undefined {
  for (const own of [channel, other])
    if (own !== undefined && site.sensors[own] === undefined) return `${site.name} has no sensor ${own}`;
  if (name === 'topic-silent' && onSerialLine)
    return 'topic-silent needs topics, and this device is on a serial line; device-silent is the like of it';
  if (name === 'reservoir-short' && site.plumbing !== 'reservoir')
    return `${site.name} has no drain-back reservoir`;
  if (name === 'drain-stuck-open' && site.drain !== 'drain-valve') return `${site.name} has no drain valve`;
  return undefined;
}

/** One line a fault, for people. */
export function faultList(): string[] {
  return faultNames.map((name) => {
    const { on, meaning, size } = declarationOf(name);
    const form = {
      sensor: `${name}:CHANNEL`,
      'two-sensors': `${name}:CHANNEL/OTHER`,
      part: name,
      device: name,
    }[on];
    const sized =
      size === undefined
        ? ''
        : ` Size: ${size.least} to ${size.most} (${size.unit}), ${size.default} unless said.`;
    return `${form.padEnd(29)} ${meaning}${sized}`;
  });
}

const refused = (at: keyof WrittenFault, why: string): Refusal => ({ ok: false, at, why });
const isFaultName = (text: string): text is FaultName => (faultNames as readonly string[]).includes(text);
const isChannel = (text: string): text is Channel => (channels as readonly string[]).includes(text);
