import type { Exercise, NameExercise } from '../../shared/exercise/exercise.ts';
import { silentIn } from '../../shared/exercise/silent.ts';
import { namedText, rightName } from '../../shared/exercise/name-words.ts';
import type { Correction, KeyNote } from '../../shared/exercise/verdict.ts';
import { place, samePlace, type StringNumber } from '../../shared/theory/fretboard.ts';
import { degreeSign, type NoteNaming } from '../../shared/theory/naming.ts';
import type { NeckNote } from './state.ts';

/** A note of the answer key as charts draw it: its interval inside, the root in its own shape. */
export function keyNote({ place, degree, finger, optional, layer }: KeyNote): NeckNote {
  return {
    place,
    look: layer ?? 'filled',
    label: degreeSign(degree),
    root: degree === '1',
    finger,
    optional,
  };
}

/**
 * The key with the fingers that a chart shows: a chord's are its form's; in a scale a few numbers under strings that
 * hold one note would say nothing, so the root's alone, where it is asked.
 */
export function fingersToShow(exercise: Exercise, key: readonly KeyNote[]): readonly KeyNote[] {
  if (exercise.kind !== 'scale') return key;
  const isAsked = ({ place: { string }, degree }: KeyNote) =>
    exercise.asksFinger === true && degree === '1' && string === exercise.rootString;
  return key.map((note) => {
    const { finger: _finger, ...unfingered } = note;
    return isAsked(note) ? note : unfingered;
  });
}

/** The place that was asked for by name, with its right name: a note in the reader's own, else its degree. */
export function namedNote(exercise: NameExercise, naming: NoteNaming): NeckNote {
  const name = rightName(exercise);
  // An interval's words would not fit into a mark.
  const label = namedText(name, exercise.wanted === 'note' ? 'note' : 'degree', naming);
  return {
    place: exercise.place,
    look: 'filled',
    label,
    root: name.kind === 'degree' && name.degree === '1',
  };
}

/** More slurs than this cross each other and hide the chart. */
const mostSlurs = 6;

/** The corrections that are drawn as slurs: all of them or, where a whole pattern was moved, those of the root. */
export function slurs(corrections: readonly Correction[], key: readonly KeyNote[]): readonly Correction[] {
  if (corrections.length <= mostSlurs) return corrections;
  const roots = key.filter((note) => note.degree === '1');
  return corrections.filter(({ to }) => roots.some((root) => samePlace(root.place, to)));
}

/** Strings that stay silent, where the exercise says which strings make the chord. */
export function silentStrings(exercise: Exercise, key: readonly KeyNote[]): readonly NeckNote[] {
  return mutedNotes(silentIn(exercise, key));
}

/** An X for each of these strings. */
export function mutedNotes(strings: readonly StringNumber[]): readonly NeckNote[] {
  return strings.map((string) => ({ place: place(string, 0), look: 'muted' }));
}
