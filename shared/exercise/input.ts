import type { Place } from '../theory/fretboard.ts';
import type { Exercise, NameExercise } from './exercise.ts';

/** What a Stand takes as the answer; holds nothing that would give it away. */
export type Input =
  | {
      readonly kind: 'places';
      /** A chord has one note a string, other exercises may have more. */
      readonly perString: 'one' | 'many';
      /** True where places are given one after another; the same place may then come twice. */
      readonly ordered: boolean;
      readonly marksRoot: boolean;
      readonly asksFinger: boolean;
    }
  | { readonly kind: 'name'; readonly place: Place; readonly wanted: NameExercise['wanted'] };

/** `inputOf` a chord is places, one a string. */
export function inputOf(exercise: Exercise): Input {
  if (exercise.kind === 'name') return { kind: 'name', place: exercise.place, wanted: exercise.wanted };
  const isFind = exercise.kind === 'find';
  return {
    kind: 'places',
    perString: exercise.kind === 'build' ? 'one' : 'many',
    ordered: exercise.kind === 'scale' && exercise.order !== undefined,
    marksRoot: !isFind && exercise.marksRoot === true,
    asksFinger: !isFind && exercise.asksFinger === true,
  };
}
