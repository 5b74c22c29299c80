import { refusal } from './replies.ts';

/** The answer to a job that nobody wants any more. */
export const wasGivenUp = refusal('note', 'It was given up.');
