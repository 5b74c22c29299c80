import { selectAlarms } from '../store/live-selectors.ts';
import { type LiveState, useLive } from '../store/live-store.ts';
import { standing } from '../store/new-alarms.ts';
import { en } from '../text/en.ts';
import { ChoicesMenu } from './choices-menu.tsx';
import styles from './header.module.css';
import { type Route, type ScreenName, screenNames } from './route.ts';
import { SiteName } from './site-name.tsx';
import { useAddress } from './use-address.ts';

const selectAlarmCount = (state: LiveState) => standing(selectAlarms(state)).length;

const start = (screen: ScreenName): Route =>
  screen === 'days' || screen === 'replay' ? { screen, day: null } : { screen };

/**
 * The bar on top: whose loop, which screen, how it looks.
 * @param screen - Null while no screen is shown, before somebody signed in.
 */
export function Header({ screen }: { readonly screen: ScreenName | null }) {
  return (
    <header className={styles['bar']}>
      <div className={styles['name']}>
        <Mark />
        <span className={styles['word']}>{en.shell.name}</span>
        {screen === null ? null : <SiteName />}
      </div>
      {screen === null ? null : <Screens screen={screen} />}
      <ChoicesMenu />
    </header>
  );
}

function Screens({ screen }: { readonly screen: ScreenName }) {
  const alarmCount = useLive(selectAlarmCount);
  const address = useAddress();
  return (
    <nav aria-label={en.shell.navigation} className={styles['screens']}>
      {screenNames.map((name) => (
        <a
          key={name}
          href={address(start(name))}
          aria-current={name === screen ? 'page' : undefined}
          className={styles['screen']}
        >
          {en.shell.screens[name]}
          {name === 'alarms' && alarmCount > 0 ? (
            <span className={styles['count']}>
              {alarmCount}
              <span className="visually-hidden"> {en.shell.standing}</span>
            </span>
          ) : null}
        </a>
      ))}
    </nav>
  );
}

function Mark() {
  return (
    <svg width="28" height="28" viewBox="0 0 32 32" aria-hidden="true" focusable="false">
      <rect width="32" height="32" rx="7" className={styles['mark']} />
      <path d="M6 13h20M6 19h20" className={styles['water']} strokeWidth="3" strokeLinecap="round" />
    </svg>
  );
}
