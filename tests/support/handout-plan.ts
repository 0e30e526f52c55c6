import type { Exercise } from '../../shared/exercise/exercise.ts';
import type { PlannedExercise } from '../../shared/plans/plan.ts';
import { along, between, find, form, frets, name, position, stacked } from '../../shared/plans/making.ts';
import { build } from './exercises.ts';

/** Twelve exercises of every kind, one of them at two levels. */

const of = (exercise: Exercise, index: number, harder: readonly Exercise[] = []): PlannedExercise => ({
  id: `handout-exercise-${String(index)}`,
  part: 'new',
  exercise,
  harder,
  seconds: null,
});

export const handoutPlan: readonly PlannedExercise[] = [
  find('D', 2),
  { ...find('Ab', 2), wanted: 'every' as const, strictness: 'anywhere' as const },
  { ...find('E', 2), strictness: 'range' as const, range: frets(5, 9) },
  name('F#', 2, 7),
  { ...name('D', 3, 9), wanted: 'interval' as const },
  build('E', 'minor', { marksRoot: true }),
  form('C', 'A', 'minor', 2, 10),
  stacked('drop-2', [4, 3, 2, 1], 'D', 'm7', 2, 3),
  build('E', '7', { voicing: { kind: 'any' }, strictness: 'range', range: frets(5, 8) }),
  position('minor-pentatonic', 'E', 2, 5, 1),
  { ...between('major', 'D', 2, frets(2, 6)), order: 'up' as const, marksRoot: true },
  along('major', 'D', 2, frets(3, 15)),
].map((exercise: Exercise, index) => of(exercise, index, index === 0 ? [find('Eb', 2)] : []));
