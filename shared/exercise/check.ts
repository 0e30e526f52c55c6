import { failure, success, type Result } from '../lib/result.ts';
import { neededDegrees } from '../theory/chord-rule.ts';
import { chordDegrees, notesOn } from '../theory/chord.ts';
import {
  instrumentById,
  isOnNeck,
  pitchClassAt,
  stringNumbers,
  type Fret,
  type Instrument,
} from '../theory/fretboard.ts';
import { parseInstrument } from '../theory/instrument-id.ts';
import { octave, pitchClassOf } from '../theory/pitch.ts';
import { formRow } from '../theory/shape.ts';
import { toneDegrees } from '../theory/tone-sets.ts';
import type { BuildExercise, Exercise, NameExercise, ScaleExercise } from './exercise.ts';
import { rootFingerOf } from './extras.ts';
import { numberText } from './phrases.ts';
import { acceptedRoots } from './roots.ts';
import { targetsOf } from './targets.ts';

/**
 * Whether the exercise can be asked: its wording says what is right, and something is. The failure is a sentence
 * for the teacher (SPEC CHECK).
 */
export function checkExercise(exercise: Exercise): Result<Exercise, string> {
  const reason = problem(exercise);
  return reason === undefined ? success(exercise) : failure(reason);
}

function problem(exercise: Exercise): string | undefined {
  // Found where it was read before; read again only for what is wrong with it.
  const found = instrumentById(exercise.instrument);
  const parsed = found ? success(found) : parseInstrument(exercise.instrument);
  if (!parsed.ok) return parsed.error;
  const instrument = parsed.value;
  const { range, strictness, rootString } = exercise;
  if (!stringNumbers(instrument).includes(rootString))
    return `This instrument has no string ${String(rootString)}.`;
  if (range && range.low < 0) return 'Frets are counted from the nut, which is 0.';
  if (range && range.low > range.high) return 'The lowest fret lies above the highest.';
  if (range && range.high > instrument.fretCount)
    return `The neck ends at fret ${String(instrument.fretCount)}.`;
  if ((strictness === 'place' || strictness === 'range') && !range) return 'Say which frets.';
  if (exercise.kind === 'name') return problemOfName(exercise, instrument);
  const roots = acceptedRoots(exercise);
  if (roots.length === 0) return 'The root does not lie there.';
  if (strictness === 'place' && roots.length > 1)
    return 'These frets hold the root twice. Narrow them to one place.';
  const problemThere = problemOfKind(exercise, instrument);
  if (problemThere !== undefined) return problemThere;
  if (targetsOf(exercise).length > 0) return problemOfExtras(exercise);
  return fitsElsewhere(exercise, octave)
    ? 'From the root there it would reach before the nut. Twelve frets up it fits.'
    : fitsElsewhere(exercise, -octave)
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

function problemOfName(
  { place, root, rootString, wanted }: NameExercise,
  instrument: Instrument,
): string | undefined {
  if (!isOnNeck(instrument, place)) return 'This place is not on the neck.';
  if (place.string !== rootString) return 'The string named is not the one that the place is on.';
  if (wanted === 'note' && pitchClassOf(root) !== pitchClassAt(instrument, place))
    return 'This place sounds another note.';
  return undefined;
}

/** What is asked besides the notes must have one answer that the words don't give away. */
function problemOfExtras(exercise: Exercise): string | undefined {
  if (exercise.kind !== 'build' && exercise.kind !== 'scale') return undefined;
  if (!exercise.asksFinger || rootFingerOf(exercise) !== undefined) return undefined;
  return exercise.kind === 'build'
    ? 'No finger is given for the root there. Ask for a form with its root on a fret.'
    : 'Which finger takes the root is open. Ask in a range of four frets that holds the root on its string.';
}

function problemOfKind(exercise: Exercise, instrument: Instrument): string | undefined {
  switch (exercise.kind) {
    case 'find':
    case 'name':
      return undefined;
    case 'build':
      return problemOfBuild(exercise, instrument);
    case 'scale':
      return problemOfScale(exercise);
  }
}

const tooManyTones = 'This chord has more tones than strings are named.';

function problemOfBuild(exercise: BuildExercise, instrument: Instrument): string | undefined {
  const { root, quality, voicing, rootString, strictness, bass } = exercise;
  if (!notesOn(root, chordDegrees(quality))) return 'This root would need a triple accidental. Respell it.';
  const needed = neededDegrees(quality);
  if (voicing.kind === 'any') return needed.length > instrument.openStrings.length ? tooManyTones : undefined;
  if (voicing.kind === 'form') {
    if (bass) return 'A form has its own lowest note. Ask for any voicing, or for strings.';
    return formRow(voicing.form, quality, rootString)
      ? undefined
      : `This form has no such chord with its root on string ${String(rootString)}.`;
  }
  if (voicing.kind === 'family' && bass) return 'The way it is stacked has its own lowest note.';
  const unknown = voicing.strings.find((string) => !stringNumbers(instrument).includes(string));
  if (unknown !== undefined) return `This instrument has no string ${String(unknown)}.`;
  if (new Set(voicing.strings).size !== voicing.strings.length) return 'A string is named twice.';
  if (voicing.strings.length < needed.length) return tooManyTones;
  const bound = strictness === 'place' || strictness === 'string';
  return bound && !voicing.strings.includes(rootString)
    ? 'The root string is not among the strings.'
    : undefined;
}

function problemOfScale({
  root,
  scale,
  coverage,
  strictness,
  perString,
  oneString,
}: ScaleExercise): string | undefined {
  if (!notesOn(root, toneDegrees(scale))) return 'This root would need a triple accidental. Respell it.';
  if (perString && (coverage !== 'every-pitch' || (strictness !== 'place' && strictness !== 'string')))
    return 'A fixed number of notes on every string needs a root on one string, and every note of it.';
  if (perString && perString.rootAt > perString.notes)
    return `With ${numberText(perString.notes)} notes on a string the root can’t be number ${String(perString.rootAt)}.`;
  if (oneString && (perString || coverage !== 'every-pitch' || strictness !== 'range'))
    return 'Along one string needs a fret range, and every note of it there.';
  return coverage === 'every-pitch' && strictness === 'anywhere'
    ? 'Say on which string the root lies, or ask for every note name once.'
    : undefined;
}
