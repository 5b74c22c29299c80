import { useId } from 'react';
import { settingTitle } from '../../../shared-types/setting-title.ts';
import { type SettingName, settingDeclarations } from '../../../shared-types/settings.ts';
import { en } from '../text/en.ts';
import { draftSettings, withEdit, withoutEdit } from './draft.ts';
import { putDraft } from './draft-store.ts';
import type { FormPart } from './form-part.ts';
import { NumberField } from './number-field.tsx';
import styles from './setpoints.module.css';
import { isSwitch } from './setting-unit.ts';
import { fieldText, settingText } from './setting-value.ts';
import { SmallButton } from './small-button.tsx';
import { SwitchField } from './switch-field.tsx';

interface Props extends FormPart {
  readonly name: SettingName;
  readonly readOnly: boolean;
}

/** One setpoint: its value, what it means, its range and default, and what is wrong with it. */
export function SetpointField(props: Props) {
  const { name, draft, temperature, faults, inForce } = props;
  const id = useId();
  const { meaning } = settingDeclarations[name];
  const edited = draft.edits[name] !== undefined;
  const reasons = faults.filter(({ names }) => names.includes(name)).map(({ text }) => text);
  const field = {
    title: settingTitle(name),
    describedBy: `${id}-meaning ${id}-range`,
    reasons,
    ...props,
  };
  return (
    <div className={`${styles['field']} ${edited ? styles['edited'] : ''}`} data-setting={name}>
      {isSwitch(name) ? <SwitchField {...field} /> : <NumberField {...field} />}
      <p id={`${id}-meaning`} className={styles['meaning']}>
        {meaning}
      </p>
      <p id={`${id}-range`} className={styles['range']}>
        {rangeText(props)}
        {edited ? (
          <strong> · {en.setpoints.now(settingText(name, inForce[name], temperature))}</strong>
        ) : null}
      </p>
      <FieldButtons {...props} />
    </div>
  );
}

function rangeText({ name, temperature }: Props): string {
  const { least, most, default: usual } = settingDeclarations[name];
  const byDefault = en.setpoints.defaultIs(settingText(name, usual, temperature));
  if (isSwitch(name)) return byDefault;
  const range = en.setpoints.range(fieldText(name, least, temperature), settingText(name, most, temperature));
  return `${range} · ${byDefault}`;
}

function FieldButtons({ site, name, draft, readOnly }: Props) {
  const usual = settingDeclarations[name].default;
  const title = settingTitle(name);
  if (readOnly) return null;
  return (
    <div className={styles['buttons']}>
      {draftSettings(draft)[name] === usual ? null : (
        <SmallButton
          label={en.setpoints.toDefault(title)}
          onClick={() => putDraft(site, withEdit(draft, name, { text: String(usual), value: usual }))}
        >
          {en.setpoints.toDefaultShort}
        </SmallButton>
      )}
      {draft.edits[name] === undefined ? null : (
        <SmallButton
          label={en.setpoints.keepAsIs(title)}
          onClick={() => putDraft(site, withoutEdit(draft, name))}
        >
          {en.setpoints.keepAsIsShort}
        </SmallButton>
      )}
    </div>
  );
}
