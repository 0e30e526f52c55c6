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

const names = ['First', 'Second', 'Third'] as const;

/** What a level is called: `levelName(2)` is "Second". */
export function levelName(level: Level): string {
  return names[level - 1] ?? '';
}

/** The levels of so many, in their order: `levelsUpTo(2)` is 1 and 2. */
export function levelsUpTo(count: number): readonly Level[] {
  return ([1, 2, 3] as const).slice(0, count);
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

/** One level; the first where there is no such one: `exerciseAt({ exercise: find('D'), harder: [] }, 2)` is to find D. */
export function exerciseAt(levelled: Levelled, level: Level): Exercise {
  return levelsOf(levelled)[level - 1] ?? levelled.exercise;
}

/** What an answer was given to: `exerciseFor({ exercise: find('D'), harder: [find('E')] }, { level: 2 })` is to find E. */
export function exerciseFor(levelled: Levelled, answer: Pick<Answer, 'level'>): Exercise {
  return exerciseAt(levelled, levelOf(answer));
}

/** What is given, as an answer to this level: `atLevel(noAnswer, 2).level` is 2. */
export function atLevel({ level: _, ...answer }: Answer, level: Level): Answer {
  return level === 1 ? answer : { ...answer, level };
}
