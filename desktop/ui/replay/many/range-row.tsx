import { NativeSelect, TextInput } from '@mantine/core';
import { settingTitle } from '../../../../shared-types/setting-title.ts';
import { type SettingName, type Settings, settingDeclarations } from '../../../../shared-types/settings.ts';
import type { TemperatureUnit } from '../../format/units.ts';
import { settingUnit } from '../../setpoints/setting-unit.ts';
import { fieldText, settingText } from '../../setpoints/setting-value.ts';
import { SmallButton } from '../../setpoints/small-button.tsx';
import { en } from '../../text/en.ts';
import { settingOptions } from '../setting-options.ts';
import styles from './many.module.css';
import { newRange, type RangeDraft, type ReadRange } from './range-draft.ts';

const text = en.tuning.many;

interface Props {
  readonly draft: RangeDraft;
  readonly faults: ReadRange['faults'];
  readonly inForce: Settings;
  readonly temperature: TemperatureUnit;
  readonly onDraft: (draft: RangeDraft) => void;
  /** Undefined for the last one: something has to be tried. */
  readonly onRemove: (() => void) | undefined;
}

/** A setpoint, from where to where, and in how many values. */
export function RangeRow({ draft, faults, inForce, temperature, onDraft, onRemove }: Props) {
  const { setting } = draft;
  const title = settingTitle(setting);
  const { least, most } = settingDeclarations[setting];
  const { symbol } = settingUnit(setting, temperature);
  return (
    <fieldset className={styles['range']}>
      <legend className="visually-hidden">{title}</legend>
      <NativeSelect
        label={text.setting}
        value={setting}
        data={settingOptions()}
        onChange={(event) =>
          onDraft(newRange(event.currentTarget.value as SettingName, inForce, temperature))
        }
        description={text.range(
          fieldText(setting, least, temperature),
          settingText(setting, most, temperature),
        )}
        inputWrapperOrder={['label', 'input', 'description', 'error']}
      />
      {(['from', 'to', 'values'] as const).map((part) => (
        <TextInput
          key={part}
          label={text[part]}
          aria-label={text.named(title, text[part])}
          inputMode="decimal"
          autoComplete="off"
          value={draft[part]}
          error={faults[part]}
          onChange={(event) => onDraft({ ...draft, [part]: event.currentTarget.value })}
          {...(part === 'values' || symbol === ''
            ? {}
            : { rightSection: <Unit symbol={symbol} />, rightSectionWidth: 56 })}
        />
      ))}
      {onRemove === undefined ? null : (
        <div className={styles['remove']}>
          <SmallButton label={text.remove(title)} onClick={onRemove}>
            {text.removeShort}
          </SmallButton>
        </div>
      )}
    </fieldset>
  );
}

function Unit({ symbol }: { readonly symbol: string }) {
  return (
    <span aria-hidden="true" className={styles['unit']}>
      {symbol}
    </span>
  );
}
