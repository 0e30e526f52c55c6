import type { Exercise } from './exercise.ts';
import { targetsOf } from './targets.ts';
import type { KeyNote } from './verdict.ts';

/**
 * The answer key as a chart: the right answer nearest the nut. A form that would need a fret before the nut comes
 * twelve frets up. Empty only for an exercise that `checkExercise` refuses.
 */
export function answerKey(exercise: Exercise): readonly KeyNote[] {
  const targets = targetsOf(exercise);
  // A note is found wherever it lies; a chord or scale is shown once.
  const shown = exercise.kind === 'find' ? targets : targets.slice(0, 1);
  return shown.flatMap(({ notes }) => {
    // Fingers are those of the hand on its frets: with an open string it takes others.
    const isOpen = notes.some((note) => note.place.fret === 0);
    return notes.map(({ place, degree, finger, optional }) => ({
      place,
      degree,
      ...(finger > 0 && !isOpen ? { finger } : {}),
      ...(optional ? { optional } : {}),
    }));
  });
}
