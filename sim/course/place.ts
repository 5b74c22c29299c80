import type { Site } from '../../shared-types/site.ts';
import type { DrawProfile } from '../plant/draws.ts';
import type { DayKind } from '../weather/day-kinds.ts';

/** A climate is an invented point in the sea; its weather follows from the latitude. */
export interface Place {
  readonly name: string;
  readonly location: Site['location'];
}

/** One of the three shapes of a loop that the course tries, with its sizes. */
export interface LoopShape {
  readonly name: string;
  readonly kind: 'open-high' | 'open-low' | 'reservoir';
  readonly wettedAreaM2: number;
  readonly waterDepthM: number;
  readonly flowLMin: number;
  readonly powerW: number;
  readonly storeL: number;
  readonly draw: DrawProfile;
}

/** A fixed day: where, when, how the weather is, and how warm the store is when it begins. */
export interface CourseDay {
  readonly name: string;
  readonly place: Place;
  /** Solar day such as 2031-06-21. */
  readonly date: string;
  readonly kind: DayKind;
  readonly seed: number;
  readonly storeC: number;
}

/** Days and loops; each day is run with each loop. */
export interface Course {
  readonly name: string;
  readonly days: readonly CourseDay[];
  readonly shapes: readonly LoopShape[];
}
