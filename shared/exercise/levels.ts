import type { Answer } from './answer.ts';
import type { Exercise } from './exercise.ts';

/** Easier and harder versions of one exercise, side by side; 1 is the first level. */
export type Level = 1 | 2 | 3;

/** An exercise that may be asked at more than one level. */
export interface Levelled {
  /** The first level. */
  readonly exercise: Exercise;
  /** The second and third, where there are any. */
  readonly harder: readonly Exercise[];
}

/** As many as stand beside the first. */
export const mostHarder = 2;

/** All levels, the first one first: `levelsOf({ exercise: find('D'), harder: [] }).length` is 1. */
export function levelsOf({ exercise, harder }: Levelled): readonly Exercise[] {
  return [exercise, ...harder];
}

/** The level an answer was given to; the first where it says none. */
export function levelOf({ level }: Pick<Answer, 'level'>): Level {
  return level ?? 1;
}

/** What an answer was given to; the first level where there is no such one. */
export function exerciseFor(levelled: Levelled, answer: Pick<Answer, 'level'>): Exercise {
  return levelsOf(levelled)[levelOf(answer) - 1] ?? levelled.exercise;
}
