import { existsSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

/** File that starts a program at login on a Linux desktop (Desktop Application Autostart Specification). */
export const autostartFile = (configFolder: string): string =>
  join(configFolder, 'autostart', 'flatwater-monitor.desktop');

export const startsAtLogin = existsSync;

/** Writes or removes that file. @param command - Program and arguments. */
export function setAutostart(path: string, command: readonly string[], on: boolean): void {
  if (on) {
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, autostartEntry(command));
  } else rmSync(path, { force: true });
}

function autostartEntry(command: readonly string[]): string {
  return `[Desktop Entry]\nType=Application\nName=flatwater\nExec=${command.map(quoted).join(' ')}\nTerminal=false\n`;
}

/**
 * An argument of an Exec line (Desktop Entry Specification, "The Exec key"): in quotes, with a backslash
 * before the signs that keep a meaning there. Backslashes are doubled once more, as in every string of such a
 * file, and a per cent sign stands for itself only when it is doubled. A line ends at a line break.
 */
function quoted(argument: string): string {
  const escaped = argument
    .replace(/["`$\\]/g, '\\$&')
    .replaceAll('\\', '\\\\')
    .replaceAll('%', '%%');
  return `"${escaped.replaceAll('\n', '\\n')}"`;
}
