import type { Exercise } from '../../shared/exercise/exercise.ts';
import type { KeyNote } from '../../shared/exercise/verdict.ts';
import { place, stringNumbers, type Instrument } from '../../shared/theory/fretboard.ts';
import { degreeSign } from '../../shared/theory/naming.ts';
import type { NeckNote } from './state.ts';

/** A note of the answer key as charts draw it: its interval inside, the root in its own shape. */
export function keyNote({ place, degree, finger, optional }: KeyNote): NeckNote {
  return { place, look: 'filled', label: degreeSign(degree), root: degree === '1', finger, optional };
}

/** Strings that stay silent, where the exercise says which strings make the chord. */
export function silentStrings(
  instrument: Instrument,
  exercise: Exercise,
  key: readonly KeyNote[],
): readonly NeckNote[] {
  if (exercise.kind !== 'build' || exercise.voicing.kind === 'any') return [];
  return stringNumbers(instrument)
    .filter((string) => key.every((note) => note.place.string !== string))
    .map((string) => ({ place: place(string, 0), look: 'muted' }));
}
