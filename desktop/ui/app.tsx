import { MantineProvider } from '@mantine/core';
import { type RefObject, useEffect, useRef } from 'react';
import styles from './app.module.css';
import { assertNever } from './assert-never.ts';
import { Late, latePart } from './late-part.tsx';
import { LiveScreen } from './live/live-screen.tsx';
import { Announcer } from './shell/announcer.tsx';
import { BannerList } from './shell/banner-list.tsx';
import { FaultBoundary } from './shell/fault-boundary.tsx';
import { FeedContext } from './shell/feed-context.ts';
import { Header } from './shell/header.tsx';
import type { Route } from './shell/route.ts';
import { SignIn } from './shell/sign-in.tsx';
import { useAlarmSound } from './shell/use-alarm-sound.ts';
import { useDocumentTitle } from './shell/use-document-title.ts';
import { useRoute } from './shell/use-route.ts';
import { useSiteInAddress } from './shell/use-site-in-address.ts';
import type { Feed } from './store/feed.ts';
import { selectDoor, selectSiteName } from './store/live-selectors.ts';
import { useLive } from './store/live-store.ts';
import { en } from './text/en.ts';
import { theme } from './theme.ts';

const waiting = <p className={styles['waiting']}>{en.shell.loading}</p>;
// Whoever only glances at Live need not wait for the others.
const daysScreen = latePart(() => import('./days/days-screen.tsx'));
const alarmsScreen = latePart(() => import('./alarms/alarms-screen.tsx'));
const siteScreen = latePart(() => import('./site/site-screen.tsx'));
const panCheckScreen = latePart(() => import('./pan-check/pan-check-screen.tsx'));
const setpointsScreen = latePart(() => import('./setpoints/setpoints-screen.tsx'));
const replayScreen = latePart(() => import('./replay/replay-screen.tsx'));

export function App({ feed }: { readonly feed: Feed }) {
  return (
    <MantineProvider theme={theme} defaultColorScheme="auto">
      <FeedContext value={feed}>
        <Frame />
      </FeedContext>
    </MantineProvider>
  );
}

function Frame() {
  const route = useRoute();
  const shut = useLive(selectDoor) === 'shut';
  const main = useRef<HTMLElement>(null);
  useSiteInAddress();
  useAlarmSound();
  const site = useLive(selectSiteName);
  useDocumentTitle(route);
  useFocusOnNewScreen(route, main);
  return (
    <>
      <button type="button" className={styles['skip']} onClick={() => main.current?.focus()}>
        {en.shell.skip}
      </button>
      <Header screen={shut ? null : route.screen} />
      <main ref={main} tabIndex={-1} className={styles['main']}>
        <BannerList />
        <FaultBoundary key={`${route.screen} ${site}`}>
          {shut ? <SignIn /> : <Screen route={route} />}
        </FaultBoundary>
      </main>
      <Announcer />
    </>
  );
}

function Screen({ route }: { readonly route: Route }) {
  switch (route.screen) {
    case 'live':
      return <LiveScreen />;
    case 'days':
      return <Late part={daysScreen} props={{ day: route.day }} waiting={waiting} />;
    case 'replay':
      return <Late part={replayScreen} props={{ day: route.day, part: route.part }} waiting={waiting} />;
    case 'pan-check':
      return <Late part={panCheckScreen} props={{}} waiting={waiting} />;
    case 'alarms':
      return <Late part={alarmsScreen} props={{}} waiting={waiting} />;
    case 'site':
      return <Late part={siteScreen} props={{}} waiting={waiting} />;
    case 'setpoints':
      return <Late part={setpointsScreen} props={{}} waiting={waiting} />;
    default:
      return assertNever(route);
  }
}

/** Whoever followed a link goes on reading at the new screen, not at the old link. */
function useFocusOnNewScreen(route: Route, main: RefObject<HTMLElement | null>): void {
  const before = useRef(route);
  useEffect(() => {
    if (before.current === route) return;
    before.current = route;
    main.current?.focus({ preventScroll: true });
    window.scrollTo({ top: 0 });
  }, [route, main]);
}
