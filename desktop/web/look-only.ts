import type {
  MonitorApi,
  MonitorMethod,
  MonitorParams,
  MonitorReply,
} from '../../shared-types/monitor-api.ts';
import { refusal } from '../host/replies.ts';
import type { Holder } from './tokens.ts';

/**
 * Whom each call is open to: `look` for everybody who signed in, `ask` for what moves or changes something. Whoever
 * may only look ends no work of others: `begin` is open to them and makes a job theirs, `end` is open for such jobs.
 */
const openTo: Readonly<Record<MonitorMethod, Holder | 'begin' | 'end'>> = {
  hostState: 'look',
  sites: 'look',
  days: 'look',
  day: 'look',
  recent: 'look',
  events: 'look',
  logFacts: 'look',
  allowedHeat: 'look',
  replay: 'look',
  whatIf: 'begin',
  compareDay: 'begin',
  // What it has tried is kept beside the log, in place of what somebody's sweep before has tried.
  sweep: 'ask',
  // The fit that it leaves beside the log is what everybody's comparisons stand on from then on.
  fit: 'ask',
  panCheck: 'begin',
  keptFit: 'look',
  heavyJob: 'look',
  jobProgress: 'look',
  cancelJob: 'end',
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

const signInToAsk = 'Sign out, and sign in again with the token that may ask.';
const lookOnly = refusal('error', 'Refused: you are signed in to look only.', signInToAsk);
const notYours = refusal(
  'error',
  'Refused: you are signed in to look only, and this job is not one that you began.',
  signInToAsk,
);

/** The same monitor for one client who may only look: whatever asks for more is refused in words. */
export function lookOnlyApi(api: MonitorApi): MonitorApi {
  /** Jobs of this client, and whether each is truly its own. */
  const jobs = new Map<string, Promise<boolean>>();

  async function begin<M extends MonitorMethod>(
    method: M,
    params: MonitorParams<M>,
  ): Promise<MonitorReply<M>> {
    const job = jobOf(params);
    // Everybody may learn the names of jobs: one that runs already is not made one's own by beginning it again.
    const own = api.call('jobProgress', { job }).then((reply) => reply.ok && reply.result === null);
    jobs.set(job, own);
    await own;
    return api.call(method, params).finally(() => jobs.delete(job));
  }

  return {
    async call(method, params) {
      const open = openTo[method];
      if (open === 'ask') return lookOnly;
      if (open === 'begin') return begin(method, params);
      if (open === 'end' && !(await jobs.get(jobOf(params)))) return notYours;
      return api.call(method, params);
    },
    listen: (listener) => api.listen(listener),
  };
}

/** The job that a call names. Its parameters are not checked yet: the monitor refuses what is none. */
const jobOf = (params: unknown) => (params as { readonly job: string } | undefined | null)?.job ?? '';
