/** Why the embedded broker could not start; the message says it in words for a person. */
export class BrokerStartError extends Error {
  readonly reason: 'port-taken' | 'port-not-allowed' | 'no-such-address' | 'other';

  constructor(reason: BrokerStartError['reason'], message: string) {
    super(message);
    this.name = 'BrokerStartError';
    this.reason = reason;
  }
}

/** Turns what the system said into words. */
export function brokerStartError(error: NodeJS.ErrnoException, host: string, port: number): BrokerStartError {
  const at = `port ${port} of ${host}`;
  if (error.code === 'EADDRINUSE')
    return new BrokerStartError('port-taken', `the broker cannot start: ${at} is taken by another program`);
  if (error.code === 'EACCES')
    return new BrokerStartError(
      'port-not-allowed',
      `the broker cannot start: ${at} is not allowed to this user`,
    );
  if (error.code === 'EADDRNOTAVAIL' || error.code === 'ENOTFOUND')
    return new BrokerStartError(
      'no-such-address',
      `the broker cannot start: this machine has no address ${host}`,
    );
  return new BrokerStartError('other', `the broker cannot start at ${at}: ${error.message}`);
}
