import { Menu, Notification, nativeImage, Tray } from 'electron';
import type { News } from './alarm-news.ts';
import { type MenuActs, trayMenu } from './menu.ts';
import { iconBitmap, iconPixels } from './tray-icon.ts';
import { trayText } from './tray-text.ts';

/** Puts the mark beside the clock. @returns what shows another state there. */
export function openTray(acts: MenuActs): (state: string) => void {
  const icon = nativeImage.createFromBitmap(iconBitmap(), { width: iconPixels, height: iconPixels });
  const tray = new Tray(icon);
  tray.on('click', acts.show);
  const show = (state: string) => {
    tray.setToolTip(state);
    tray.setContextMenu(Menu.buildFromTemplate(trayMenu(state, acts)));
  };
  show(trayText(undefined, []));
  return show;
}

/** Tells something at once, where the desktop has notifications. */
export function notify(news: News, onClick: () => void): void {
  if (!Notification.isSupported()) return;
  const notification = new Notification({ title: news.title, body: news.body });
  notification.on('click', onClick);
  notification.show();
}
