import type { Answer } from '../../../shared-types/engine.ts';
import { assertNever } from '../assert-never.ts';
import { durationText } from '../format/times.ts';
import type { Asked } from '../store/request-store.ts';
import { en } from '../text/en.ts';

const text = en.requests;

/** What became of a request, in words; empty before the first. */
export function outcomeText(asked: Asked): string {
  switch (asked.state) {
    case 'none':
      return '';
    case 'asking':
      return text.asking;
    case 'answered':
      return answerText(asked.answer);
    case 'unanswered':
      return [text.unanswered, asked.problem.text, asked.problem.tip ?? ''].join(' ').trim();
    default:
      return assertNever(asked);
  }
}

/** The controller's own sentence, and when what was asked ends by itself. */
function answerText(answer: Answer): string {
  if (answer.leaseMs === undefined) return answer.text;
  return `${answer.text} ${text.endsByItself(durationText(answer.leaseMs))}`;
}
