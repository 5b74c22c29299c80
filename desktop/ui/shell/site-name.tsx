import { NativeSelect } from '@mantine/core';
import { useShallow } from 'zustand/react/shallow';
import { selectSiteName, selectSiteNames, selectSiteTitle, titleOf } from '../store/live-selectors.ts';
import { useLive } from '../store/live-store.ts';
import { en } from '../text/en.ts';
import { useFeed } from './feed-context.ts';
import styles from './site-name.module.css';

/** Whose loop is shown; a choice where the broker carries more than one. */
export function SiteName() {
  const names = useLive(selectSiteNames);
  const title = useLive(selectSiteTitle);
  if (title === null) return null;
  return names.length > 1 ? <SiteChoice names={names} /> : <span className={styles['title']}>{title}</span>;
}

function SiteChoice({ names }: { readonly names: readonly string[] }) {
  const feed = useFeed();
  const chosen = useLive(selectSiteName);
  const titles = useLive(useShallow((state) => names.map((name) => titleOf(state, name) ?? name)));
  return (
    <NativeSelect
      aria-label={en.shell.site}
      size="sm"
      value={chosen ?? ''}
      data={names.map((value, index) => ({ value, label: titles[index] ?? value }))}
      onChange={(event) => feed.choose(event.currentTarget.value)}
    />
  );
}
