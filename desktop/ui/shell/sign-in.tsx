import { Button, TextInput } from '@mantine/core';
import { useId, useRef, useState } from 'react';
import { durationText } from '../format/times.ts';
import type { SignInOutcome } from '../gate.ts';
import { en } from '../text/en.ts';
import { useFeed } from './feed-context.ts';
import styles from './sign-in.module.css';

const text = en.signIn;

/** Stands in place of every screen until the monitor knows whom it shows them to. */
export function SignIn() {
  const feed = useFeed();
  const headingId = useId();
  const input = useRef<HTMLInputElement>(null);
  const [token, setToken] = useState('');
  const [fault, setFault] = useState<string | null>(null);
  const [asking, setAsking] = useState(false);
  const send = async () => {
    setAsking(true);
    const outcome = await feed.signIn(token.trim());
    setAsking(false);
    setFault(faultOf(outcome));
    if (outcome.kind !== 'in') input.current?.select();
  };
  return (
    <section aria-labelledby={headingId} className={styles['card']}>
      <h1 id={headingId}>{text.heading}</h1>
      <p>{text.lead}</p>
      <form
        className={styles['form']}
        onSubmit={(event) => {
          event.preventDefault();
          if (!asking) void send();
        }}
      >
        <TextInput
          ref={input}
          type="password"
          label={text.token}
          description={text.where}
          autoComplete="current-password"
          required
          value={token}
          error={fault}
          errorProps={{ role: 'alert' }}
          onChange={(event) => setToken(event.currentTarget.value)}
        />
        <Button type="submit">{asking ? text.asking : text.button}</Button>
      </form>
    </section>
  );
}

function faultOf(outcome: SignInOutcome): string | null {
  if (outcome.kind === 'in') return null;
  return outcome.kind === 'wait' ? text.wait(durationText(outcome.waitS * 1000)) : text[outcome.kind];
}
