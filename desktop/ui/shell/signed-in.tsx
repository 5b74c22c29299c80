import { Button } from '@mantine/core';
import type { Right } from '../../../shared-types/monitor-access.ts';
import { type LiveState, useLive } from '../store/live-store.ts';
import { en } from '../text/en.ts';
import styles from './choices-menu.module.css';
import { useFeed } from './feed-context.ts';

/** What somebody who signed in may do; undefined where nobody has to. */
const selectSignedIn = ({ access }: LiveState): Right | undefined =>
  access.wantsToken ? access.may : undefined;

/** As whom one is signed in, and the way out. */
export function SignedIn() {
  const feed = useFeed();
  const may = useLive(selectSignedIn);
  if (may === undefined) return null;
  return (
    <div>
      <p className={styles['label']}>{en.signIn.signedIn[may]}</p>
      <Button variant="default" fullWidth onClick={() => void feed.signOut()}>
        {en.signIn.signOut}
      </Button>
    </div>
  );
}
