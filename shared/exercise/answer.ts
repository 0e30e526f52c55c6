import type { Place } from '../theory/fretboard.ts';
import type { Degree } from '../theory/interval.ts';
import type { NoteName } from '../theory/pitch.ts';
import type { Finger } from './exercise.ts';
import type { Heard, Way } from './heard.ts';

/** What a place was called: a note, or how far it lies above the root. */
export type Named =
  { readonly kind: 'note'; readonly note: NoteName } | { readonly kind: 'degree'; readonly degree: Degree };

/** What a student gave: places in the order given, and what else the exercise asked for. */
export interface Answer {
  /** With `heard` these are only the places that were tapped for it (`Playing.taps`). */
  readonly places: readonly Place[];
  /** What was played, where it isn't known on which strings. */
  readonly heard?: Heard;
  /** How it was given; absent where it was tapped. */
  readonly way?: Way;
  /** The answer to _name_. */
  readonly named?: Named;
  /** The place that was marked as the root; one of `places`. */
  readonly root?: Place;
  /** The finger said to take the root. */
  readonly finger?: Finger;
  /** Where the exercise is asked at several levels: which one it answers; absent for the first. */
  readonly level?: 2 | 3;
  /** What the teacher marked where it isn't known what was placed, as on paper; stands alone. */
  readonly teacherSays?: TeacherSays;
}

export type TeacherSays = 'right' | 'not-yet';

/** What _name_ can be answered with, by semitones above the root; the fourth and fifth altered both ways. */
export const namedDegrees = [
  '1',
  'b2',
  '2',
  'b3',
  '3',
  '4',
  '#4',
  'b5',
  '5',
  '#5',
  'b6',
  '6',
  'b7',
  '7',
] as const;

export const noAnswer: Answer = { places: [] };

/** Nothing placed, nothing heard, nothing named and nothing marked by the teacher: no answer (SPEC ANSWER-5). */
export function isEmpty({ places, heard, named, teacherSays }: Answer): boolean {
  return places.length === 0 && heard === undefined && named === undefined && teacherSays === undefined;
}

/** The answer alone, of something that holds one: `answerOf(placedAnswer)`. */
export function answerOf({ places, heard, way, named, root, finger, level, teacherSays }: Answer): Answer {
  return {
    places,
    ...(heard === undefined ? {} : { heard }),
    ...(way === undefined ? {} : { way }),
    ...(named === undefined ? {} : { named }),
    ...(root === undefined ? {} : { root }),
    ...(finger === undefined ? {} : { finger }),
    ...(level === undefined ? {} : { level }),
    ...(teacherSays === undefined ? {} : { teacherSays }),
  };
}
