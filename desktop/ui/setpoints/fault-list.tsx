import { settingTitle } from '../../../shared-types/setting-title.ts';
import { useSentence } from '../shell/use-formats.ts';
import { en } from '../text/en.ts';
import type { Fault } from './draft-faults.ts';
import styles from './setpoints.module.css';

const text = en.setpoints.changes;

/** Every reason that keeps the changes from being applied; the region is there before the first. */
export function FaultList({ faults }: { readonly faults: readonly Fault[] }) {
  const inUnits = useSentence();
  return (
    <div role="status">
      {faults.length === 0 ? null : (
        <div className={styles['faults']}>
          <p>{text.faults(faults.length)}</p>
          <ul>
            {faults.map(({ names, text: reason }) => (
              <li key={`${names.join()} ${reason}`}>
                {text.fault(names.map(settingTitle).join(', '), inUnits(reason))}
              </li>
            ))}
          </ul>
        </div>
      )}
    </div>
  );
}
