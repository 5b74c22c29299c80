import type { ReplayPart } from '../shell/route.ts';
import { useAddress } from '../shell/use-address.ts';
import { en } from '../text/en.ts';
import styles from './replay-parts.module.css';

const text = en.replay.parts;
const parts = ['same', 'other', 'many'] as const;

interface Props {
  readonly part: ReplayPart | undefined;
  readonly day: string | null;
}

/** The three questions that Replay answers, each under an address of its own. */
export function ReplayParts({ part: shown = undefined, day }: Props) {
  const address = useAddress();
  return (
    <nav aria-label={text.label}>
      <ul className={styles['parts']}>
        {parts.map((name) => {
          const part = name === 'same' ? undefined : name;
          const here = part === shown;
          return (
            <li key={name}>
              <a
                href={address({ screen: 'replay', day, ...(part === undefined ? {} : { part }) })}
                aria-current={here ? 'page' : undefined}
                className={`${styles['part']} ${here ? styles['here'] : ''}`}
              >
                {text[name]}
              </a>
            </li>
          );
        })}
      </ul>
    </nav>
  );
}
