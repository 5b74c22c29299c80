import { type SettingName, settingNames } from '../../../shared-types/settings.ts';
import { type SettingRange, settingRangeSchema } from '../../../shared-types/tuning.ts';

const pattern = /^(\w+)=([^:]+):([^:]+):([^:]+)$/;

/** Reads ranges such as `startDifferenceK=4:10:4`: from, to, number of values. @throws RangeError with words. */
export function readRanges(texts: readonly string[]): SettingRange[] {
  return texts.map(rangeOf);
}

function rangeOf(text: string): SettingRange {
  const match = pattern.exec(text);
  if (match === null) throw new RangeError(`'${text}' is no range: write setting=from:to:values`);
  const [setting = '', from, to, values] = match.slice(1);
  if (!isSetting(setting))
    throw new RangeError(`there is no setting '${setting}'; there are: ${settingNames.join(', ')}`);
  const parsed = settingRangeSchema.safeParse({
    setting,
    from: Number(from),
    to: Number(to),
    values: Number(values),
  });
  if (parsed.success) return parsed.data;
  const words = parsed.error.issues.map(({ path, message }) => [...path, message].join(': '));
  throw new RangeError(`'${text}' is no range: ${words.join('; ')}`);
}

const isSetting = (name: string): name is SettingName => (settingNames as readonly string[]).includes(name);
