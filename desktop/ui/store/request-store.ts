import { create } from 'zustand';
import type { Answer } from '../../../shared-types/engine.ts';
import type { Problem } from '../../../shared-types/monitor-api.ts';

/** What became of the last request that was made on this page. */
export type Asked =
  | { readonly state: 'none' }
  | { readonly state: 'asking' }
  | { readonly state: 'answered'; readonly answer: Answer }
  | { readonly state: 'unanswered'; readonly problem: Problem };

export const useAsked = create<{ readonly asked: Asked }>(() => ({ asked: { state: 'none' } }));

export const selectAsked = (state: { readonly asked: Asked }): Asked => state.asked;
