import { NativeSelect } from '@mantine/core';
import { useShallow } from 'zustand/react/shallow';
import { selectSiteName, selectSiteNames, selectSiteTitle } from '../store/live-selectors.ts';
import { useLive } from '../store/live-store.ts';
import { en } from '../text/en.ts';
import { withSite } from './site-address.ts';
import { siteLabels } from './site-labels.ts';
import styles from './site-name.module.css';

/** Whose loop is shown; a choice where there is another than that. */
export function SiteName() {
  const heard = useLive(selectSiteNames);
  const shown = useLive(selectSiteName);
  const title = useLive(selectSiteTitle);
  if (shown === null) return null;
  if (heard.length === 0 || (heard.length === 1 && heard[0] === shown))
    return <bdi className={styles['title']}>{title}</bdi>;
  return <SiteChoice names={heard.includes(shown) ? heard : [shown, ...heard]} shown={shown} />;
}

/** @param names - All sites that can be chosen, the one that is shown among them. */
function SiteChoice({ names, shown }: { readonly names: readonly string[]; readonly shown: string }) {
  const labels = useLive(useShallow((state) => siteLabels(state, names)));
  return (
    <NativeSelect
      aria-label={en.shell.site}
      size="sm"
      className={styles['choice'] ?? ''}
      value={shown}
      data={names.map((value, index) => ({ value, label: labels[index] ?? value }))}
      onChange={(event) => {
        // The address is what is obeyed, so that going back leads to the site before.
        window.location.hash = withSite(window.location.hash, event.currentTarget.value);
      }}
    />
  );
}
