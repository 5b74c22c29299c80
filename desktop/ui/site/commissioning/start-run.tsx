import { Button, Checkbox } from '@mantine/core';
import { useState } from 'react';
import { RequestDialog } from '../../live/request-dialog.tsx';
import type { RequestPlan } from '../../live/request-plan.ts';
import { useFeed } from '../../shell/feed-context.ts';
import { useUnavailable } from '../../shell/use-unavailable.ts';
import { selectLease } from '../../store/decision-selectors.ts';
import { useLive } from '../../store/live-store.ts';
import { en } from '../../text/en.ts';
import { CautionNote } from '../facts-card.tsx';
import styles from './commissioning.module.css';

const text = en.commissioning;

type Ready = keyof typeof text.readiness;
const readiness = Object.keys(text.readiness) as Ready[];

const plan: RequestPlan = { ...text.start, operation: { kind: 'commission' } };

/** What a person makes sure of before the run, and the button that waits for it. */
export function StartRun({ site }: { readonly site: string }) {
  const feed = useFeed();
  const unavailable = useUnavailable();
  const [sure, setSure] = useState<readonly Ready[]>([]);
  const [asking, setAsking] = useState(false);
  const ready = sure.length === readiness.length;
  const tick = (one: Ready, on: boolean) =>
    setSure(on ? [...sure, one] : sure.filter((other) => other !== one));
  const start = () => {
    setAsking(false);
    setSure([]);
    void feed.request(site, plan.operation);
  };
  return (
    <>
      <p>{text.lead}</p>
      <p className={styles['soft']}>{text.best}</p>
      <Cautions />
      <fieldset className={styles['ready']}>
        <legend>{text.ready}</legend>
        {readiness.map((one) => (
          <Checkbox
            key={one}
            label={text.readiness[one]}
            checked={sure.includes(one)}
            onChange={(event) => tick(one, event.currentTarget.checked)}
          />
        ))}
      </fieldset>
      <Busy />
      <div className={styles['act']}>
        <Button variant="default" disabled={!ready || unavailable !== null} onClick={() => setAsking(true)}>
          {text.start.button}
        </Button>
        <span className={styles['soft']}>{unavailable ?? (ready ? '' : text.tickFirst)}</span>
      </div>
      <RequestDialog plan={asking ? plan : null} onConfirm={start} onCancel={() => setAsking(false)} />
    </>
  );
}

function Cautions() {
  return (
    <div className={styles['cautions']}>
      <h3>{text.before}</h3>
      <ul>
        {text.cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
      <CautionNote code="mains" />
      <CautionNote code="roof-load" />
    </div>
  );
}

/** Another request that still holds gives way to the run: that is said before. */
function Busy() {
  const lease = useLive(selectLease);
  if (lease === null) return null;
  return <p className={styles['soft']}>{text.busy(en.live.leases[lease.kind])}</p>;
}
