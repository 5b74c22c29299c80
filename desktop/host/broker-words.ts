import type { Problem } from '../../shared-types/monitor-api.ts';
import { wordsOf } from './replies.ts';

/** Return codes of a refused connection: MQTT 3.1.1 section 3.2.2.3, MQTT 5 section 3.2.2.2. */
const credentialCodes: readonly unknown[] = [4, 5, 134, 135];

const networkWords: Readonly<Record<string, string>> = {
  ECONNREFUSED: 'nothing listens at that address',
  ENOTFOUND: 'there is no such host',
  EHOSTUNREACH: 'the host cannot be reached',
  ETIMEDOUT: 'it does not answer',
  ECONNRESET: 'it broke the connection off',
};

/** Why the monitor has no broker, in words. */
export function brokerProblem(brokerUrl: string, thrown: unknown): Problem {
  const code = thrown instanceof Error && 'code' in thrown ? thrown.code : undefined;
  if (credentialCodes.includes(code))
    return {
      severity: 'error',
      text: `The broker at ${brokerUrl} refuses the monitor's name or password.`,
      tip: 'Check the name and the password file that the monitor was started with.',
    };
  const why = (typeof code === 'string' ? networkWords[code] : undefined) ?? wordsOf(thrown);
  return {
    severity: 'error',
    text: `The broker at ${brokerUrl} cannot be reached: ${why}.`,
    tip: 'The monitor keeps trying. Controllers go on without it.',
  };
}
