/** Resolves at the first Ctrl-C, SIGTERM or SIGHUP. Later ones change nothing: stopping is on its way. */
export function stopAsked(): Promise<undefined> {
  const { promise, resolve } = Promise.withResolvers<undefined>();
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, () => resolve(undefined));
  return promise;
}
