import { handFrets } from '../theory/position.ts';
import type { BuildExercise, Finger, ScaleExercise } from './exercise.ts';
import { instrumentOf, rootsOn } from './roots.ts';
import { targetsOf } from './targets.ts';

/** Form, quality and root string where teachers give the root different fingers (common practice, no source). */
const schoolsDiffer: ReadonlySet<string> = new Set([
  'G major 6',
  'G major 1',
  'triad-321 major 2',
  'triad-321 aug 2',
]);

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
  const { form } = exercise.voicing;
  if (schoolsDiffer.has(`${form} ${exercise.quality} ${String(exercise.rootString)}`)) return [];
  return targetsOf(exercise).flatMap(({ notes }) => {
    // With an open string the hand takes the shape with other fingers.
    const isOpen = notes.some((note) => note.place.fret === 0);
    return notes
      .filter((note) => note.degree === '1' && note.place.string === exercise.rootString)
      .map((note) => (isOpen ? 0 : note.finger));
  });
}

function handFingers(exercise: ScaleExercise): readonly number[] {
  const { strictness, range, rootString } = exercise;
  const isHand = range && range.low >= 1 && range.high - range.low === fingers - 1;
  if (strictness !== 'range' || !isHand || handFrets(instrumentOf(exercise)) !== fingers) return [];
  return rootsOn(exercise, rootString)
    .filter((spot) => spot.fret >= range.low && spot.fret <= range.high)
    .map((spot) => spot.fret - range.low + 1);
}
