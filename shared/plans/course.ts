import { checkExercise } from '../exercise/check.ts';
import type { Exercise } from '../exercise/exercise.ts';
import { answerKey } from '../exercise/key.ts';
import { holds, type InstrumentId } from '../theory/fretboard.ts';
import { otherStrings } from './other-strings.ts';
import type { ReadyPlan } from './ready-plan.ts';
import { string2Chords } from './string-2-chords.ts';
import { string2Notes } from './string-2-notes.ts';
import { string2Roads } from './string-2-roads.ts';
import { string2Scales } from './string-2-scales.ts';
import { string2Sevenths } from './string-2-sevenths.ts';

/** The lessons in the order in which they build on each other. */
export const course: readonly ReadyPlan[] = [
  ...string2Notes,
  ...string2Chords,
  ...string2Scales,
  ...string2Roads,
  ...string2Sevenths,
  ...otherStrings,
];

/**
 * The lessons that fit an instrument, made for it: every exercise can be asked there, and its answer lies where the
 * teacher's words say. `plansFor('guitar')` is the whole course, `plansFor('ukulele')` is empty.
 */
export function plansFor(instrument: InstrumentId): readonly ReadyPlan[] {
  return course
    .filter((plan) => plan.exercises.every(({ exercise }) => fits(exercise, instrument)))
    .map((plan) => ({
      ...plan,
      exercises: plan.exercises.map((planned) => ({
        ...planned,
        exercise: { ...planned.exercise, instrument },
      })),
    }));
}

/** A longer neck or one string more adds places; none may go. */
function fits(exercise: Exercise, instrument: InstrumentId): boolean {
  const there = { ...exercise, instrument };
  if (!checkExercise(there).ok) return false;
  const places = answerKey(there).map((note) => note.place);
  return answerKey(exercise).every((note) => holds(places, note.place));
}
