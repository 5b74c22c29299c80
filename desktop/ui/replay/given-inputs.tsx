import { channelMeaning, channels } from '../../../shared-types/channels.ts';
import type { EngineInput } from '../../../shared-types/engine.ts';
import { inLine } from '../format/numbers.ts';
import { durationText } from '../format/times.ts';
import { useNumbers } from '../shell/use-formats.ts';
import { en } from '../text/en.ts';
import styles from './comparison.module.css';

/** What the logic was given at an instant, as it came in. */
export function GivenInputs({ input }: { readonly input: EngineInput }) {
  const numbers = useNumbers();
  return (
    <details className={styles['given']}>
      <summary>{en.replay.inputs}</summary>
      <dl className={`${styles['inputs']} number`}>
        {channels.flatMap((channel) => {
          const reading = input.readings[channel];
          if (reading === undefined) return [];
          const { unit, title } = channelMeaning[channel];
          const value =
            reading.value === null ? en.replay.inputMissing : inLine(numbers.channel(unit, reading.value));
          const age = en.live.readings.old(durationText(reading.ageMs));
          return [<Given key={channel} title={title} value={`${value}, ${reading.fault ?? age}`} />];
        })}
        {input.feedback === null ? null : (
          <Given title={en.replay.feedback} value={numbers.percent(input.feedback.pumpFraction)} />
        )}
        {input.request === null ? null : (
          <Given title={en.replay.operation} value={input.request.operation.kind} />
        )}
      </dl>
    </details>
  );
}

function Given({ title, value }: { readonly title: string; readonly value: string }) {
  return (
    <div>
      <dt>{title}</dt>
      <dd>{value}</dd>
    </div>
  );
}
