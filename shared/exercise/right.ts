import { chordSounds } from '../theory/chord-rule.ts';
import { isStacked, type StackedFamily } from '../theory/families.ts';
import { distinct, holds, midiAt, pitchClassAt, type Place } from '../theory/fretboard.ts';
import { pitchClassOn, type Degree } from '../theory/interval.ts';
import { pitchClassOf, type PitchClass } from '../theory/pitch.ts';
import type { Answer, Named } from './answer.ts';
import { rootFingerOf } from './extras.ts';
import {
  hasGivenShape,
  type BuildExercise,
  type Exercise,
  type NameExercise,
  type ScaleExercise,
} from './exercise.ts';
import { isInOrder } from './order.ts';
import { acceptedRoots, toneAt, degreesAsked, instrumentOf, isInRange, isRootBound } from './roots.ts';
import { targetsOf, type Target } from './targets.ts';

/** Whether the answer satisfies all that the exercise asks. */
export function isRight(exercise: Exercise, answer: Answer): boolean {
  if (exercise.kind === 'name') return answer.named !== undefined && isRightName(exercise, answer.named);
  return (
    arePlacesRight(exercise, answer.places) &&
    isInOrder(exercise, answer.places) &&
    isRootMarked(exercise, answer) &&
    isFingerRight(exercise, answer)
  );
}

/** Whether these places, in any order, are what the exercise asks. */
export function arePlacesRight(exercise: Exercise, given: readonly Place[]): boolean {
  // On as many strings as places nothing can be given twice.
  const places = hasOneNoteAString(given) ? given : distinct(given);
  if (places.length === 0) return false;
  switch (exercise.kind) {
    case 'name':
      return false;
    case 'find': {
      const roots = acceptedRoots(exercise);
      const isRoot = places.every((spot) => holds(roots, spot));
      return isRoot && (exercise.wanted !== 'every' || places.length === roots.length);
    }
    case 'build':
      return hasOneNoteAString(places) && isChord(exercise, places);
    case 'scale':
      return isScale(exercise, places);
  }
}

/** The pitch class that a name means for this exercise. */
export function pitchClassNamed(exercise: NameExercise, named: Named): PitchClass {
  return named.kind === 'note' ? pitchClassOf(named.note) : pitchClassOn(exercise.root, named.degree);
}

/** Any spelling of the note, any name of the interval: the neck shows no key. */
function isRightName(exercise: NameExercise, named: Named): boolean {
  const asksNote = exercise.wanted === 'note';
  const sounding = pitchClassAt(instrumentOf(exercise), exercise.place);
  return asksNote === (named.kind === 'note') && pitchClassNamed(exercise, named) === sounding;
}

/** Whether the mark that was asked for stands on a root of the answer. */
export function isRootMarked(exercise: Exercise, { places, root }: Answer): boolean {
  if (exercise.kind === 'find' || exercise.kind === 'name' || !exercise.marksRoot) return true;
  if (!root || !holds(places, root)) return false;
  return pitchClassAt(instrumentOf(exercise), root) === pitchClassOf(exercise.root);
}

export function isFingerRight(exercise: Exercise, { finger }: Answer): boolean {
  if (exercise.kind === 'find' || exercise.kind === 'name' || !exercise.asksFinger) return true;
  return finger !== undefined && finger === rootFingerOf(exercise);
}

function hasOneNoteAString(places: readonly Place[]): boolean {
  return new Set(places.map((spot) => spot.string)).size === places.length;
}

/** The degree of each place, or undefined where one is foreign. */
function degreesIn(exercise: Exercise, places: readonly Place[]): readonly Degree[] | undefined {
  const found = places.map((spot) => toneAt(exercise, spot));
  return found.every((degree) => degree !== undefined) ? found : undefined;
}

/** The place that sounds lowest: on a re-entrant tuning it need not lie on the last string. */
function lowestOf(exercise: Exercise, places: readonly Place[]): Place | undefined {
  const instrument = instrumentOf(exercise);
  return [...places].sort((a, b) => midiAt(instrument, a) - midiAt(instrument, b))[0];
}

/** The degree that sounds lowest, where it is not the root and neither a form nor a bass says which. */
export function inversionOf(exercise: BuildExercise, places: readonly Place[]): Degree | undefined {
  const isGiven = exercise.bass !== undefined || hasGivenShape(exercise);
  const lowest = isGiven ? undefined : lowestOf(exercise, places);
  const degree = lowest && toneAt(exercise, lowest);
  return degree === '1' ? undefined : degree;
}

function isChord(exercise: BuildExercise, places: readonly Place[]): boolean {
  const { voicing, strictness, range } = exercise;
  const sounding = degreesIn(exercise, places);
  if (!sounding) return false;
  if (strictness === 'range' && !places.every((spot) => isInRange(range, spot))) return false;
  if (voicing.kind === 'form')
    return targetsOf(exercise).some((target) => isForm(target, places, voicing.full));
  const isChosen =
    voicing.kind === 'any' ||
    (places.length === voicing.strings.length &&
      places.every((spot) => voicing.strings.includes(spot.string)));
  if (!isChosen || !isSounding(exercise, places, sounding) || !hasRoot(exercise, places)) return false;
  return voicing.kind !== 'family' || isFamily(exercise, voicing.family, places);
}

/** The words say how it is stacked, and not how wide the hand is: what sounds decides. */
function isFamily(exercise: BuildExercise, family: StackedFamily, places: readonly Place[]): boolean {
  const instrument = instrumentOf(exercise);
  const fromLow = places.toSorted((a, b) => midiAt(instrument, a) - midiAt(instrument, b));
  const pitches = fromLow.map((spot) => midiAt(instrument, spot));
  const degrees = fromLow.flatMap((spot) => toneAt(exercise, spot) ?? []);
  return isStacked(family, exercise.quality, degrees, pitches);
}

/** Whether what sounds is the chord (SPEC CHORD), over the bass that was asked for. */
function isSounding(exercise: BuildExercise, places: readonly Place[], sounding: readonly Degree[]): boolean {
  const lowest = lowestOf(exercise, places);
  if (!lowest) return false;
  const { quality, bass } = exercise;
  if (bass && pitchClassAt(instrumentOf(exercise), lowest) !== pitchClassOf(bass)) return false;
  return chordSounds(quality, sounding, { bass: toneAt(exercise, lowest) }).ok;
}

/** The form's own places, its optional ones free; one more chord tone may sound unless the full form is asked. */
function isForm(target: Target, places: readonly Place[], full: boolean): boolean {
  if (!target.notes.every((note) => holds(places, note.place) || (note.optional && !full))) return false;
  const others = places.filter((spot) => !holds(target.accepted, spot));
  return others.length <= (full ? 0 : 1);
}

function hasRoot(exercise: Exercise, places: readonly Place[]): boolean {
  if (!isRootBound(exercise)) return true;
  return acceptedRoots(exercise).some((root) => holds(places, root));
}

function isScale(exercise: ScaleExercise, places: readonly Place[]): boolean {
  const sounding = degreesIn(exercise, places);
  if (!sounding) return false;
  if (exercise.coverage === 'every-tone') {
    const inRange =
      exercise.strictness !== 'range' || places.every((spot) => isInRange(exercise.range, spot));
    const isWhole = degreesAsked(exercise).every((degree) => sounding.includes(degree));
    return inRange && hasRoot(exercise, places) && isWhole;
  }
  const instrument = instrumentOf(exercise);
  const pitches = new Set(places.map((spot) => midiAt(instrument, spot)));
  return targetsOf(exercise).some(
    (target) =>
      target.notes.every((note) => pitches.has(midiAt(instrument, note.place))) &&
      places.every((spot) => holds(target.accepted, spot)),
  );
}
