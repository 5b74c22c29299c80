import { Button, Popover, SegmentedControl, useMantineColorScheme } from '@mantine/core';
import { useId } from 'react';
import { heatUnits, temperatureUnits } from '../format/units.ts';
import {
  choose,
  selectAlarmSound,
  selectHeatUnit,
  selectTemperatureUnit,
  useChoices,
} from '../store/choices-store.ts';
import { en } from '../text/en.ts';
import styles from './choices-menu.module.css';
import { SignedIn } from './signed-in.tsx';
import { alarmSound } from './use-alarm-sound.ts';

const text = en.shell.choices;

/** Appearance and units, kept by this browser. */
export function ChoicesMenu() {
  return (
    <Popover position="bottom-end" shadow="md" trapFocus returnFocus>
      <Popover.Target>
        <Button variant="default" size="sm" aria-label={text.button} title={text.button}>
          <svg width="18" height="18" viewBox="0 0 18 18" aria-hidden="true" focusable="false">
            <path d="M2 5h14M2 13h14" stroke="currentColor" strokeWidth="1.5" />
            <circle cx="6" cy="5" r="2.25" fill="currentColor" />
            <circle cx="12" cy="13" r="2.25" fill="currentColor" />
          </svg>
        </Button>
      </Popover.Target>
      <Popover.Dropdown aria-label={text.button}>
        <Choices />
      </Popover.Dropdown>
    </Popover>
  );
}

function Choices() {
  const { colorScheme, setColorScheme } = useMantineColorScheme();
  const temperature = useChoices(selectTemperatureUnit);
  const heat = useChoices(selectHeatUnit);
  const sound = useChoices(selectAlarmSound);
  return (
    <div className={styles['choices']}>
      <Choice
        label={text.appearance}
        value={colorScheme}
        options={(['auto', 'light', 'dark'] as const).map((value) => ({ value, label: text.schemes[value] }))}
        onChange={setColorScheme}
      />
      <Choice
        label={text.temperature}
        value={temperature}
        options={temperatureUnits.map((value) => ({ value, label: text.temperatureUnits[value] }))}
        onChange={(value) => choose({ temperature: value })}
      />
      <Choice
        label={text.heat}
        value={heat}
        options={heatUnits.map((value) => ({ value, label: text.heatUnits[value] }))}
        onChange={(value) => choose({ heat: value })}
      />
      <Choice
        label={text.alarmSound}
        value={sound ? 'on' : 'off'}
        options={(['off', 'on'] as const).map((value) => ({ value, label: text.alarmSounds[value] }))}
        onChange={(value) => chooseSound(value === 'on')}
      />
      <SignedIn />
    </div>
  );
}

/** Whoever switches it on hears what it sounds like; a browser wants such a click before it plays anything. */
function chooseSound(on: boolean): void {
  choose({ alarmSound: on });
  if (on) alarmSound.play();
}

interface ChoiceProps<Value extends string> {
  readonly label: string;
  readonly value: Value;
  readonly options: { value: Value; label: string }[];
  readonly onChange: (value: Value) => void;
}

function Choice<Value extends string>({ label, value, options, onChange }: ChoiceProps<Value>) {
  const id = useId();
  return (
    <div>
      <p id={id} className={styles['label']}>
        {label}
      </p>
      <SegmentedControl fullWidth value={value} data={options} onChange={onChange} aria-labelledby={id} />
    </div>
  );
}
