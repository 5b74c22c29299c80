import { InvalidArgumentError } from 'commander';

/** Reads a port from a command line: 0 (any free one) to 65535. */
export function parsePort(text: string): number {
  const port = Number(text);
  if (!/^\d{1,5}$/.test(text) || port > 65_535) throw new InvalidArgumentError('A port is 0 to 65535.');
  return port;
}
