import { type Channel, channelMeaning } from '../../../shared-types/channels.ts';
import type { Sensor } from '../../../shared-types/site.ts';
import { useReadingView } from '../live/use-reading-view.ts';
import { Card } from '../shell/card.tsx';
import { useNumbers } from '../shell/use-formats.ts';
import { selectLagMs, selectReading, selectSite, selectSnapshot } from '../store/live-selectors.ts';
import { type LiveState, useLive } from '../store/live-store.ts';
import { en } from '../text/en.ts';
import { PairOffset } from './pair-offset.tsx';
import styles from './sensor-card.module.css';
import { ageText, fittedChannels, sourceText, viewRaw } from './sensor-rows.ts';

const text = en.site.sensors;

/** Every sensor of the loop: what it is, what it says, what came in, and what is not fitted. */
export function SensorCard() {
  const site = useLive(selectSite);
  if (site === undefined) return null;
  const { fitted, missing } = fittedChannels(site);
  return (
    <Card heading={text.heading}>
      <ul>
        {fitted.map((channel) => {
          const sensor = site.sensors[channel];
          return sensor === undefined ? null : <SensorRow key={channel} channel={channel} sensor={sensor} />;
        })}
      </ul>
      <PairOffset />
      <Missing channels={missing} />
    </Card>
  );
}

function SensorRow({ channel, sensor }: { readonly channel: Channel; readonly sensor: Sensor }) {
  const view = useReadingView(channel);
  const { title, meaning } = channelMeaning[channel];
  return (
    <li className={`${styles['row']} ${styles[view?.look ?? 'failed']}`} data-sensor={channel}>
      <div className={styles['what']}>
        <h3>{title}</h3>
        <p className={styles['soft']}>{meaning}</p>
        <p className={styles['source']}>{sourceText(sensor)}</p>
      </div>
      <dl className={`${styles['said']} number`}>
        <div>
          <dt>{text.columns.value}</dt>
          <dd>
            <span className={styles['value']}>{view?.value ?? text.neverHeard}</span>
            <span className={styles['note']}>{view?.note ?? text.good}</span>
          </dd>
        </div>
        <Raw channel={channel} />
      </dl>
    </li>
  );
}

const selectDevice = (state: LiveState) => selectSnapshot(state)?.device ?? null;

function Raw({ channel }: { readonly channel: Channel }) {
  const device = useLive(selectDevice);
  const reading = useLive(selectReading(channel));
  const lagMs = useLive(selectLagMs);
  const numbers = useNumbers();
  const raw = device === null ? undefined : viewRaw(channel, device.readings[channel], numbers, lagMs);
  const age = raw?.age ?? (reading === undefined ? '' : ageText(reading, lagMs));
  return (
    <>
      <div>
        <dt>{text.columns.raw}</dt>
        <dd>{raw?.value ?? en.site.unknown}</dd>
      </div>
      <div>
        <dt>{text.columns.age}</dt>
        <dd>{age === '' ? '–' : age}</dd>
      </div>
    </>
  );
}

function Missing({ channels }: { readonly channels: readonly Channel[] }) {
  if (channels.length === 0) return <p className={styles['soft']}>{text.all}</p>;
  return (
    <details className={styles['missing']}>
      <summary>
        {text.missing} ({channels.length})
      </summary>
      <dl>
        {channels.map((channel) => (
          <div key={channel}>
            <dt>{channelMeaning[channel].title}</dt>
            <dd>{en.withoutSensor[channel]}</dd>
          </div>
        ))}
      </dl>
    </details>
  );
}
