import { useState } from 'react';
import { Card } from '../shell/card.tsx';
import { useFeed } from '../shell/feed-context.ts';
import { goesWell, Outcome } from '../shell/outcome.tsx';
import { outcomeText } from '../shell/outcome-text.ts';
import { useSentence } from '../shell/use-formats.ts';
import { selectListening, selectLookOnly, selectSiteName } from '../store/live-selectors.ts';
import { useLive } from '../store/live-store.ts';
import { selectAsked, useAsked } from '../store/request-store.ts';
import { en } from '../text/en.ts';
import styles from './request-card.module.css';
import { RequestDialog } from './request-dialog.tsx';
import { RequestOffer } from './request-offer.tsx';
import type { RequestKind, RequestPlan } from './request-plan.ts';

const kinds: readonly RequestKind[] = ['run-pump', 'empty', 'rest', 'automatic'];

/** What a person may ask of the loop, and what the controller answered. */
export function RequestCard() {
  const feed = useFeed();
  const site = useLive(selectSiteName);
  const listening = useLive(selectListening);
  const lookOnly = useLive(selectLookOnly);
  const [confirming, setConfirming] = useState<RequestPlan | null>(null);
  const ask = (plan: RequestPlan) => {
    setConfirming(null);
    if (site !== null) void feed.request(site, plan.operation);
  };
  return (
    <Card heading={en.requests.heading}>
      <p className={styles['lead']}>{leadText(listening, lookOnly)}</p>
      <RequestOutcome />
      <ul className={styles['offers']}>
        {kinds.map((kind) => (
          <li key={kind}>
            <RequestOffer
              kind={kind}
              disabled={!listening}
              onChoose={(plan) => (plan.consequence === undefined ? ask(plan) : setConfirming(plan))}
            />
          </li>
        ))}
      </ul>
      <RequestDialog plan={confirming} onConfirm={ask} onCancel={() => setConfirming(null)} />
    </Card>
  );
}

function leadText(listening: boolean, lookOnly: boolean): string {
  if (listening) return en.requests.lead;
  return lookOnly ? en.requests.lookOnly : en.requests.unavailable;
}

/** The answer, where the request was made. */
function RequestOutcome() {
  const asked = useAsked(selectAsked);
  const inUnits = useSentence();
  return <Outcome good={goesWell(asked)}>{inUnits(outcomeText(asked))}</Outcome>;
}
