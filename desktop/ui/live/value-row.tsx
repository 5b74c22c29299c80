import type { Channel } from '../../../shared-types/channels.ts';
import type { Site } from '../../../shared-types/site.ts';
import type { LabelName } from './drawing/label-places.ts';
import { LoopState } from './loop-state.tsx';
import type { ReadingView } from './reading-view.ts';
import { useReadingView } from './use-reading-view.ts';
import styles from './value-row.module.css';

const skyChannels: readonly Channel[] = ['ambientC', 'irradianceWM2', 'windMs', 'humidityFraction'];

/** What the weather does, above the drawing where the sky is. */
export function SkyRow() {
  return (
    <div className={styles['row']}>
      {skyChannels.map((channel) => (
        <SkyValue key={channel} channel={channel} />
      ))}
    </div>
  );
}

function SkyValue({ channel }: { readonly channel: Channel }) {
  const view = useReadingView(channel);
  return view === undefined ? null : <Value view={view} />;
}

/** What a small drawing has no room for. */
export function LoopRow({ site, names }: { readonly site: Site; readonly names: readonly LabelName[] }) {
  return (
    <div className={styles['row']}>
      {names.map((name) => (
        <LoopState key={name} name={name} site={site}>
          {(view) => <Value view={view} />}
        </LoopState>
      ))}
    </div>
  );
}

function Value({ view }: { readonly view: ReadingView }) {
  return (
    <p>
      <span className={styles['title']}>{view.title}</span>{' '}
      <span className={`number ${styles['value']} ${styles[view.look]}`}>{view.value}</span>
      {view.note === undefined ? null : <span className={styles['title']}> ({view.note})</span>}
    </p>
  );
}
