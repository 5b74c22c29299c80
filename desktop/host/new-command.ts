import { Command } from 'commander';

/** Exit codes of every command of this room. */
export const exitCodes = { stopped: 0, failed: 1, wrongOptions: 2 } as const;

const help = `
Exit codes:
  ${exitCodes.stopped}  stopped by Ctrl-C or a signal
  ${exitCodes.failed}  it could not start, or a part of it ended by itself
  ${exitCodes.wrongOptions}  wrong options; nothing was started
`;

/** A command that tells and keeps those exit codes. */
export function newCommand(name: string, description: string): Command {
  return new Command(name)
    .description(description)
    .addHelpText('after', help)
    .exitOverride(({ exitCode }) =>
      process.exit(exitCode === 0 ? exitCodes.stopped : exitCodes.wrongOptions),
    );
}
