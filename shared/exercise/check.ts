import { failure, success, type Result } from '../lib/result.ts';
import { notesOn, chordDegrees, neededDegrees, scaleDegrees } from '../theory/chord.ts';
import { instrumentById, type Fret, type Instrument } from '../theory/fretboard.ts';
import { formRow } from '../theory/shape.ts';
import type { Exercise } from './exercise.ts';
import { acceptedRoots, targetsOf } from './targets.ts';

/**
 * Whether the exercise can be asked: its wording says what is right, and something is. The failure is a sentence
 * for the teacher (SPEC CHECK).
 */
export function checkExercise(exercise: Exercise): Result<Exercise, string> {
  const reason = problem(exercise);
  return reason === undefined ? success(exercise) : failure(reason);
}

function problem(exercise: Exercise): string | undefined {
  const instrument = instrumentById(exercise.instrument);
  if (!instrument) return 'This instrument is not known here.';
  const { range, strictness, rootString } = exercise;
  if (rootString < 1 || rootString > instrument.openStrings.length)
    return `This instrument has no string ${String(rootString)}.`;
  if (range && range.low < 0) return 'Frets are counted from the nut, which is 0.';
  if (range && range.low > range.high) return 'The lowest fret lies above the highest.';
  if (range && range.high > instrument.fretCount)
    return `The neck ends at fret ${String(instrument.fretCount)}.`;
  if ((strictness === 'place' || strictness === 'range') && !range) return 'Say which frets.';
  const roots = acceptedRoots(exercise);
  if (roots.length === 0) return 'The root does not lie there.';
  if (strictness === 'place' && roots.length > 1)
    return 'These frets hold the root twice. Narrow them to one place.';
  const problemThere = problemOfKind(exercise, instrument);
  if (problemThere !== undefined) return problemThere;
  if (targetsOf(exercise).length > 0) return undefined;
  return fitsElsewhere(exercise, 12)
    ? 'From the root there it would reach before the nut. Twelve frets up it fits.'
    : fitsElsewhere(exercise, -12)
      ? 'From the root there it would reach past the last fret. Twelve frets down it fits.'
      : 'No hand position there holds all of it.';
}

/** Whether the same exercise fits when its frets are moved. */
function fitsElsewhere(exercise: Exercise, frets: number): boolean {
  const { range } = exercise;
  if (!range) return false;
  const moved = { low: (range.low + frets) as Fret, high: (range.high + frets) as Fret };
  return targetsOf({ ...exercise, range: moved }).length > 0;
}

function problemOfKind(exercise: Exercise, instrument: Instrument): string | undefined {
  switch (exercise.kind) {
    case 'find':
      return undefined;
    case 'build': {
      const { root, quality, voicing, rootString, strictness } = exercise;
      if (!notesOn(root, chordDegrees(quality)))
        return 'This root would need a triple accidental. Respell it.';
      if (voicing.kind === 'form' && !formRow(voicing.form, quality, rootString)) {
        return `This form has no such chord with its root on string ${String(rootString)}.`;
      }
      if (voicing.kind !== 'strings') return undefined;
      const unknown = voicing.strings.find((string) => string < 1 || string > instrument.openStrings.length);
      if (unknown !== undefined) return `This instrument has no string ${String(unknown)}.`;
      if (new Set(voicing.strings).size !== voicing.strings.length) return 'A string is named twice.';
      if (voicing.strings.length < neededDegrees(quality).length)
        return 'This chord has more tones than strings are named.';
      const bound = strictness === 'place' || strictness === 'string';
      return bound && !voicing.strings.includes(rootString)
        ? 'The root string is not among the strings.'
        : undefined;
    }
    case 'scale': {
      if (!notesOn(exercise.root, scaleDegrees(exercise.scale))) {
        return 'This root would need a triple accidental. Respell it.';
      }
      return exercise.coverage === 'every-pitch' && exercise.strictness === 'anywhere'
        ? 'Say on which string the root lies, or ask for every note name once.'
        : undefined;
    }
  }
}
