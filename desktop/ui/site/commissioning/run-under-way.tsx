import { Button } from '@mantine/core';
import { useState } from 'react';
import type { Commissioning, CommissioningStep } from '../../../../shared-types/commissioning.ts';
import { durationText } from '../../format/times.ts';
import { RequestDialog } from '../../live/request-dialog.tsx';
import type { RequestPlan } from '../../live/request-plan.ts';
import { useFeed } from '../../shell/feed-context.ts';
import { useSentence } from '../../shell/use-formats.ts';
import { selectLease } from '../../store/decision-selectors.ts';
import { selectDecision, selectListening, selectSite } from '../../store/live-selectors.ts';
import { type LiveState, useLive } from '../../store/live-store.ts';
import { en } from '../../text/en.ts';
import styles from './commissioning.module.css';
import { askOf, stepsOf } from './commissioning-view.ts';
import { Findings } from './findings.tsx';

const text = en.commissioning;

const stopping: RequestPlan = { ...text.stop, operation: { kind: 'automatic' } };

/** The run as it goes: its step, what is asked of the person, what was found, and the way out. */
export function RunUnderWay({ site, run }: { readonly site: string; readonly run: Commissioning }) {
  const feed = useFeed();
  const listening = useLive(selectListening);
  const inUnits = useSentence();
  const [asking, setAsking] = useState(false);
  const stop = () => {
    setAsking(false);
    void feed.request(site, stopping.operation);
  };
  return (
    <>
      <Remaining />
      <Steps now={run.step} />
      <p role="status">{inUnits(run.text)}</p>
      <Ask site={site} />
      <Findings lead={run.findings.length === 0 ? text.noFindings : ''} findings={run.findings} />
      <Button variant="default" mt="md" disabled={!listening} onClick={() => setAsking(true)}>
        {text.stop.button}
      </Button>
      <RequestDialog plan={asking ? stopping : null} onConfirm={stop} onCancel={() => setAsking(false)} />
    </>
  );
}

function Remaining() {
  const lease = useLive(selectLease);
  if (lease === null) return null;
  return <p className={styles['soft']}>{text.underWay(durationText(lease.remainingMs))}</p>;
}

function Steps({ now }: { readonly now: CommissioningStep }) {
  const site = useLive(selectSite);
  if (site === undefined) return null;
  const steps = stepsOf(site);
  const at = steps.indexOf(now);
  return (
    <ol className={styles['steps']} aria-label={text.stepList}>
      {steps.map((step, index) => {
        const state = index < at ? 'before' : index === at ? 'now' : 'after';
        return (
          <li key={step} className={styles[state]} aria-current={state === 'now' ? 'step' : undefined}>
            <span>{text.steps[step]}</span> <span className={styles['soft']}>{text.stepStates[state]}</span>
          </li>
        );
      })}
    </ol>
  );
}

const selectAsk = (state: LiveState): 'full' | 'empty' | null => {
  const decision = selectDecision(state);
  const site = selectSite(state);
  return decision === undefined || site === undefined ? null : askOf(decision, site);
};

/** What only a person can see, asked for when it matters. */
function Ask({ site }: { readonly site: string }) {
  const feed = useFeed();
  const listening = useLive(selectListening);
  const ask = useLive(selectAsk);
  if (ask === null) return null;
  return (
    <div className={styles['ask']}>
      <p>{text.asks[ask]}</p>
      <Button disabled={!listening} onClick={() => void feed.request(site, { kind: 'confirm' })}>
        {text.confirms[ask]}
      </Button>
    </div>
  );
}
