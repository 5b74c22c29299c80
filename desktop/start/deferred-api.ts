import type { MonitorApi } from '../../shared-types/monitor-api.ts';

/** A host that is still to come: calls wait for it, listeners are handed on to it. */
export function deferredApi(coming: Promise<MonitorApi>): MonitorApi {
  return {
    call: async (method, params) => (await coming).call(method, params),
    listen(listener) {
      let stop: (() => void) | undefined;
      let stopped = false;
      void coming.then((api) => {
        if (!stopped) stop = api.listen(listener);
      });
      return () => {
        stopped = true;
        stop?.();
      };
    },
  };
}
