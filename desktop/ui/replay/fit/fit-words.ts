import { channelMeaning } from '../../../../shared-types/channels.ts';
import { en } from '../../text/en.ts';

const titles: Readonly<Record<string, string>> = {
  ...Object.fromEntries(Object.entries(channelMeaning).map(([name, { title }]) => [name, title])),
  ...en.tuning.fit.titles,
};

/** What a fit calls by a short name, by its title; anything else as it is. */
export const titleOf = (name: string): string =>
  Object.hasOwn(titles, name) ? (titles[name] ?? name) : name;

/** A sentence of a fit with titles in place of its short names. */
export const inTitles = (sentence: string): string => sentence.replace(/\b[a-z]+[A-Z]\w*/g, titleOf);

/** A unit as it is written on paper. */
export const unitText = (unit: string): string => unit.replaceAll('m2', 'm²').replaceAll('m3', 'm³');
