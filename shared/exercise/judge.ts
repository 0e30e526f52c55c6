import { chordDegrees, degreeAt, neededDegrees, scaleDegrees } from '../theory/chord.ts';
import type { Degree } from '../theory/interval.ts';
import { distinct, midiAt, pitchClassAt, samePlace, type Place } from '../theory/fretboard.ts';
import type { Answer } from './answer.ts';
import type { BuildExercise, Exercise, ScaleExercise } from './exercise.ts';
import { slipIn } from './slips.ts';
import { acceptedRoots, instrumentOf, isInRange, targetsOf, type Target } from './targets.ts';
import type { Verdict } from './verdict.ts';

/** What the answer is worth; the law on fairness is SPEC JUDGE. The exercise has passed `checkExercise`. */
export function judge(exercise: Exercise, answer: Answer): Verdict {
  const places = distinct(answer.places);
  return isRight(exercise, places) ? { kind: 'right' } : slipIn(exercise, places);
}

/** Whether these places satisfy what the exercise asks. */
export function isRight(exercise: Exercise, places: readonly Place[]): boolean {
  if (places.length === 0) return false;
  switch (exercise.kind) {
    case 'find':
      return places.every((spot) => acceptedRoots(exercise).some((root) => samePlace(root, spot)));
    case 'build':
      return hasOneNoteAString(places) && isChord(exercise, places);
    case 'scale':
      return isScale(exercise, places);
  }
}

function hasOneNoteAString(places: readonly Place[]): boolean {
  return new Set(places.map((spot) => spot.string)).size === places.length;
}

/** The degree of each place, or undefined where one is foreign. */
function degreesOf(
  exercise: Exercise,
  degrees: readonly Degree[],
  places: readonly Place[],
): readonly Degree[] | undefined {
  const instrument = instrumentOf(exercise);
  const found = places.map((spot) => degreeAt(exercise.root, degrees, pitchClassAt(instrument, spot)));
  return found.every((degree) => degree !== undefined) ? found : undefined;
}

function isChord(exercise: BuildExercise, places: readonly Place[]): boolean {
  const sounding = degreesOf(exercise, chordDegrees(exercise.quality), places);
  if (!sounding) return false;
  const { voicing, strictness, range } = exercise;
  if (strictness === 'range' && !places.every((spot) => isInRange(range, spot))) return false;
  if (voicing.kind === 'form')
    return targetsOf(exercise).some((target) => isForm(target, places, voicing.full));
  if (!neededDegrees(exercise.quality).every((degree) => sounding.includes(degree))) return false;
  if (!hasRoot(exercise, places)) return false;
  if (voicing.kind === 'any') return true;
  return (
    places.length === voicing.strings.length && places.every((spot) => voicing.strings.includes(spot.string))
  );
}

/** The form's own places, its optional ones free; one more chord tone may sound unless the full form is asked. */
function isForm(target: Target, places: readonly Place[], full: boolean): boolean {
  const isGiven = (spot: Place) => places.some((given) => samePlace(given, spot));
  if (!target.notes.every((note) => isGiven(note.place) || (note.optional && !full))) return false;
  const others = places.filter((spot) => !target.accepted.some((accepted) => samePlace(accepted, spot)));
  return others.length <= (full ? 0 : 1);
}

function hasRoot(exercise: Exercise, places: readonly Place[]): boolean {
  if (exercise.strictness !== 'place' && exercise.strictness !== 'string') return true;
  return acceptedRoots(exercise).some((root) => places.some((spot) => samePlace(root, spot)));
}

function isScale(exercise: ScaleExercise, places: readonly Place[]): boolean {
  const degrees = scaleDegrees(exercise.scale);
  const sounding = degreesOf(exercise, degrees, places);
  if (!sounding) return false;
  if (exercise.coverage === 'every-tone') {
    const inRange =
      exercise.strictness !== 'range' || places.every((spot) => isInRange(exercise.range, spot));
    return inRange && hasRoot(exercise, places) && degrees.every((degree) => sounding.includes(degree));
  }
  const instrument = instrumentOf(exercise);
  const pitches = new Set(places.map((spot) => midiAt(instrument, spot)));
  return targetsOf(exercise).some(
    (target) =>
      target.notes.every((note) => pitches.has(midiAt(instrument, note.place))) &&
      places.every((spot) => target.accepted.some((accepted) => samePlace(accepted, spot))),
  );
}
