import { Button, TextInput } from '@mantine/core';
import { useId, useState } from 'react';
import { en } from '../text/en.ts';
import styles from './request-card.module.css';
import {
  minuteRanges,
  parseMinutes,
  planRequest,
  type RequestKind,
  type RequestPlan,
} from './request-plan.ts';

interface Props {
  readonly kind: RequestKind;
  readonly disabled: boolean;
  readonly onChoose: (plan: RequestPlan) => void;
}

/** One request with the sentence of what it will do. */
export function RequestOffer({ kind, disabled, onChoose }: Props) {
  const range = kind === 'run-pump' || kind === 'rest' ? minuteRanges[kind] : undefined;
  const [text, setText] = useState(String(range?.first ?? 0));
  const saysId = useId();
  const minutes = range === undefined ? 0 : parseMinutes(text, range);
  const plan = planRequest(kind, minutes ?? range?.first ?? 0);
  return (
    <form
      className={styles['offer']}
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        if (minutes !== undefined) onChoose(plan);
      }}
    >
      <p id={saysId} className={styles['says']}>
        {plan.says}
      </p>
      <div className={styles['act']}>
        {range === undefined ? null : (
          <TextInput
            aria-label={`${plan.button}: ${en.requests.minutes}`}
            inputMode="numeric"
            value={text}
            w={92}
            rightSection={
              <span aria-hidden="true" className={styles['unit']}>
                {en.requests.minutesUnit}
              </span>
            }
            rightSectionWidth={44}
            error={minutes === undefined ? en.requests.minutesRange(range.least, range.most) : undefined}
            onChange={(event) => setText(event.currentTarget.value)}
          />
        )}
        <Button type="submit" variant="default" disabled={disabled} aria-describedby={saysId}>
          {plan.button}
        </Button>
      </div>
    </form>
  );
}
