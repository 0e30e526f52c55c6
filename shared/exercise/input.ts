import type { Place } from '../theory/fretboard.ts';
import type { BuildExercise, Exercise, NameExercise } from './exercise.ts';
import type { PlayedTap, Playing } from './heard.ts';
import { pitchClassOf } from '../theory/pitch.ts';

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
      /** Null where it can't be answered by playing. */
      readonly playing: Playing | null;
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
    playing: playingOf(exercise),
  };
}

/** How the exercise is answered by playing; null where only places say it, or a name. */
export function playingOf(exercise: Exercise): Playing | null {
  switch (exercise.kind) {
    case 'name':
      return null;
    case 'find':
      return exercise.wanted === 'every' ? null : { as: 'line', taps: rootTap(exercise) };
    case 'build':
      return { as: 'chord', taps: tapsOfChord(exercise) };
    case 'scale':
      return { as: 'line', taps: rootTap(exercise) };
  }
}

function rootTap(exercise: Exercise): readonly PlayedTap[] {
  const isAsked = 'marksRoot' in exercise && exercise.marksRoot === true;
  return exercise.strictness === 'anywhere' && !isAsked ? [] : ['root'];
}

function tapsOfChord(exercise: BuildExercise): readonly PlayedTap[] {
  const { bass, root } = exercise;
  const taps = rootTap(exercise);
  if (bass === undefined) return taps;
  // The root below everything is one place to tap.
  if (pitchClassOf(bass) === pitchClassOf(root)) return ['lowest'];
  return [...taps, 'lowest'];
}
