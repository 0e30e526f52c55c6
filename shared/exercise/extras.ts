import type { BuildExercise, Finger, ScaleExercise } from './exercise.ts';
import { rootsOn } from './roots.ts';
import { targetsOf } from './targets.ts';

/** Fingers on the neck; in a range of as many frets each has its own. */
const fingers = 4;

/**
 * The finger that takes the root on the root string, where the exercise says which: a form's own, or the one that
 * lies over it where the range is the hand's four frets. Undefined where it is open or not the same everywhere.
 */
export function rootFingerOf(exercise: BuildExercise | ScaleExercise): Finger | undefined {
  const found = exercise.kind === 'build' ? formFingers(exercise) : handFingers(exercise);
  const [finger] = found;
  const isOne = finger !== undefined && found.every((other) => other === finger);
  return isOne && isFinger(finger) ? finger : undefined;
}

function isFinger(finger: number): finger is Finger {
  return finger >= 1 && finger <= fingers;
}

function formFingers(exercise: BuildExercise): readonly number[] {
  if (exercise.voicing.kind !== 'form') return [];
  return targetsOf(exercise).flatMap((target) =>
    target.notes
      .filter((note) => note.degree === '1' && note.place.string === exercise.rootString)
      .map((note) => (note.place.fret === 0 ? 0 : note.finger)),
  );
}

function handFingers(exercise: ScaleExercise): readonly number[] {
  const { strictness, range, rootString } = exercise;
  if (strictness !== 'range' || !range || range.low < 1 || range.high - range.low !== fingers - 1) return [];
  return rootsOn(exercise, rootString)
    .filter((spot) => spot.fret >= range.low && spot.fret <= range.high)
    .map((spot) => spot.fret - range.low + 1);
}
