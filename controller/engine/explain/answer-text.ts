import type { Answer } from '../../../shared-types/engine.ts';

const texts: Readonly<Record<Answer['code'], string>> = {
  accepted: 'Accepted.',
  expired: 'Refused: the request took too long to arrive.',
  'from-the-future': 'Refused: the clock of the asking side is ahead.',
  repeated: 'Refused: this request was already heard.',
  retained: 'Refused: a request must not be retained by the broker.',
  malformed: 'Refused: this is not a request that can be understood.',
  'hazard-forbids': 'Refused: a protection forbids this now.',
  'not-possible-here': 'Refused: this loop cannot do that.',
  'nothing-to-do': 'Nothing to do: it is so already.',
  'settings-refused': 'Refused: the settings break a rule.',
  'no-such-alarm': 'Refused: there is no such alarm now.',
  'not-shelvable': 'Refused: an alarm that is urgent is not put aside.',
};

/** The sentence that answers a request. */
export function answerText(code: Answer['code']): string {
  return texts[code];
}
