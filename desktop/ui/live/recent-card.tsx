import { SegmentedControl } from '@mantine/core';
import { useCallback, useState } from 'react';
import { CurvePanel } from '../charts/curve-panel.tsx';
import { Card } from '../shell/card.tsx';
import { useFeed } from '../shell/feed-context.ts';
import { LoadedView } from '../shell/loaded-view.tsx';
import { selectRecent, useHistory } from '../store/history-store.ts';
import { selectSiteName } from '../store/live-selectors.ts';
import { useLive } from '../store/live-store.ts';
import { en } from '../text/en.ts';
import { useRefresh } from './use-refresh.ts';

const text = en.live.chart;
const choices = [3, 6, 12, 24];
/** Often enough to look alive, seldom enough not to keep the log busy [ms]. */
const refreshMs = 10_000;

/** The last hours as curves, asked for anew while the page is looked at. */
export function RecentCard() {
  const [hours, setHours] = useState(6);
  const site = useLive(selectSiteName) ?? '';
  const recent = useHistory(selectRecent(site));
  const feed = useFeed();
  const load = useCallback(() => feed.loadRecent(site, hours), [feed, site, hours]);
  useRefresh(load, refreshMs);
  return (
    <Card
      heading={text.heading}
      aside={
        <SegmentedControl
          size="xs"
          aria-label={text.span}
          value={String(hours)}
          data={choices.map((one) => ({ value: String(one), label: text.hours(one) }))}
          onChange={(value) => setHours(Number(value))}
        />
      }
    >
      <LoadedView loaded={recent} onAgain={load}>
        {(curves) =>
          curves.atMs.length < 2 ? (
            <p>{text.nothing}</p>
          ) : (
            <CurvePanel curves={curves} label={text.describe} />
          )
        }
      </LoadedView>
    </Card>
  );
}
