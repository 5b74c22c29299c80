import type { MonitorApi, MonitorMethod } from '../../shared-types/monitor-api.ts';
import { refusal } from '../host/replies.ts';
import type { Holder } from './tokens.ts';

/** Whom each call is open to: `look` for everybody who signed in, `ask` for what moves or changes something. */
const openTo: Readonly<Record<MonitorMethod, Holder>> = {
  hostState: 'look',
  sites: 'look',
  days: 'look',
  day: 'look',
  recent: 'look',
  events: 'look',
  logFacts: 'look',
  allowedHeat: 'look',
  replay: 'look',
  whatIf: 'look',
  compareDay: 'look',
  sweep: 'look',
  // The fit that it leaves beside the log is what everybody's comparisons stand on from then on.
  fit: 'ask',
  panCheck: 'look',
  keptFit: 'look',
  heavyJob: 'look',
  jobProgress: 'look',
  cancelJob: 'look',
  settingsRemarks: 'look',
  beginUpload: 'ask',
  uploadPiece: 'ask',
  dropUpload: 'ask',
  uploadHead: 'ask',
  importDays: 'ask',
  columnMaps: 'look',
  keepColumnMap: 'ask',
  forgetColumnMap: 'ask',
  request: 'ask',
};

const lookOnly = refusal(
  'error',
  'Refused: you are signed in to look only.',
  'Sign out, and sign in again with the token that may ask.',
);

/** The same monitor for somebody who may only look: whatever asks for more is refused in words. */
export function lookOnlyApi(api: MonitorApi): MonitorApi {
  return {
    call: async (method, params) => (openTo[method] === 'look' ? api.call(method, params) : lookOnly),
    listen: (listener) => api.listen(listener),
  };
}
