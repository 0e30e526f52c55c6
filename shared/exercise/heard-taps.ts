import { holds, midiAt, pitchClassAt, type Place } from '../theory/fretboard.ts';
import { pitchClassOf } from '../theory/pitch.ts';
import type { Answer } from './answer.ts';
import { hasGivenShape, type BuildExercise, type Exercise } from './exercise.ts';
import type { PlayedTap } from './heard.ts';
import { playingOf } from './input.ts';
import { acceptedRoots, instrumentOf, isInRange, isRootBound } from './roots.ts';
import { markCause } from './slips.ts';
import { targetsOf } from './targets.ts';
import type { PlaceMark, SlipCause } from './verdict.ts';

/** The place that was tapped for this, of those that are asked for; undefined where it is missing or not asked. */
export function tapped(exercise: Exercise, { places }: Answer, what: PlayedTap): Place | undefined {
  const at = playingOf(exercise)?.taps.indexOf(what) ?? -1;
  return at < 0 ? undefined : places[at];
}

export function isTapAsked(exercise: Exercise, what: PlayedTap): boolean {
  return playingOf(exercise)?.taps.includes(what) ?? false;
}

/** The place that says where the root is: where the root has to be lowest, that of the lowest note. */
export function tappedRoot(exercise: Exercise, answer: Answer): Place | undefined {
  return tapped(exercise, answer, isRootLowest(exercise) ? 'lowest' : 'root');
}

function isRootLowest(exercise: Exercise): exercise is BuildExercise {
  return (
    exercise.kind === 'build' &&
    exercise.bass !== undefined &&
    pitchClassOf(exercise.bass) === pitchClassOf(exercise.root)
  );
}

export function isRootPlace(exercise: Exercise, spot: Place): boolean {
  return pitchClassAt(instrumentOf(exercise), spot) === pitchClassOf(exercise.root);
}

/** Whether the root of a right answer may have been tapped there (SPEC HEARD-4). */
export function mayBeRoot(exercise: Exercise, spot: Place): boolean {
  if (!isOnItsStrings(exercise, spot)) return false;
  const isInShape = () => targetsOf(exercise).some(({ accepted }) => holds(accepted, spot));
  if (exercise.kind === 'build' && exercise.voicing.kind === 'form' && exercise.voicing.full)
    return isRootPlace(exercise, spot) && isInShape();
  if (holds(acceptedRoots(exercise), spot)) return true;
  if (!isRootPlace(exercise, spot)) return false;
  // What is tapped only as the root's mark is right on any root (SPEC JUDGE-8).
  if (exercise.strictness === 'anywhere') return true;
  if (exercise.kind === 'build' && hasGivenShape(exercise)) return isInShape();
  return isRootLowest(exercise) && mayLieBelow(exercise, spot);
}

/** Whether the string is one that the words let sound. */
function isOnItsStrings(exercise: Exercise, { string }: Place): boolean {
  return (
    exercise.kind !== 'build' || !('strings' in exercise.voicing) || exercise.voicing.strings.includes(string)
  );
}

/** A root below the one that is bound to its string. */
function mayLieBelow(exercise: BuildExercise, spot: Place): boolean {
  const instrument = instrumentOf(exercise);
  return (
    isRootBound(exercise) &&
    acceptedRoots(exercise).some(
      (root) => root.string !== spot.string && midiAt(instrument, root) >= midiAt(instrument, spot),
    )
  );
}

/** What it is to tap this place for the root, which may not lie there. */
export function rootTapCause(exercise: Exercise, spot: Place): SlipCause {
  if (!isRootPlace(exercise, spot)) return markCause(exercise, spot);
  if (isRootBound(exercise) && spot.string !== exercise.rootString) return 'right-note-wrong-string';
  if (exercise.strictness === 'place') return 'wrong-octave';
  const isInside = exercise.strictness === 'anywhere' || isInRange(exercise.range, spot);
  return isInside ? 'wrong-form' : 'outside-range';
}

/** What is wrong with the taps of a chord that sounds right; undefined where nothing is. */
export function chordTapsCause(
  exercise: BuildExercise,
  answer: Answer,
  { hasRoot, isBassHeard }: { readonly hasRoot: boolean; readonly isBassHeard: boolean },
): SlipCause | undefined {
  const root = tapped(exercise, answer, 'root');
  // A chord that sounds without its root has no root to tap.
  if (isTapAsked(exercise, 'root') && hasRoot) {
    if (!root) return 'untapped';
    if (!mayBeRoot(exercise, root)) return rootTapCause(exercise, root);
  }
  if (!isTapAsked(exercise, 'lowest')) return undefined;
  const lowest = tapped(exercise, answer, 'lowest');
  const isPlaceAsked = isRootLowest(exercise) && (exercise.strictness !== 'anywhere' || exercise.marksRoot);
  if (!lowest) return isBassHeard && !isPlaceAsked ? undefined : 'untapped';
  const instrument = instrumentOf(exercise);
  if (exercise.bass && pitchClassAt(instrument, lowest) !== pitchClassOf(exercise.bass)) return 'wrong-bass';
  if (!isOnItsStrings(exercise, lowest)) return 'wrong-form';
  if (exercise.strictness === 'range' && !isInRange(exercise.range, lowest)) return 'outside-range';
  if (isRootLowest(exercise) && !mayBeRoot(exercise, lowest)) return rootTapCause(exercise, lowest);
  const isAbove =
    root && (root.string === lowest.string || midiAt(instrument, root) < midiAt(instrument, lowest));
  return isAbove ? 'wrong-bass' : undefined;
}

/** The taps as marks: right where a right answer may have been tapped there. */
export function tapMarks(exercise: Exercise, { places }: Answer): readonly PlaceMark[] {
  const asked = playingOf(exercise)?.taps ?? [];
  return places.map((spot, at) => ({ place: spot, right: isTapRight(exercise, asked[at], spot) }));
}

function isTapRight(exercise: Exercise, what: PlayedTap | undefined, spot: Place): boolean {
  if (what === undefined) return false;
  // The string is what was asked; its fret is heard.
  if (exercise.kind === 'find') return acceptedRoots(exercise).some((root) => root.string === spot.string);
  if (what === 'root') return mayBeRoot(exercise, spot) || isOfScale(exercise, spot);
  const bass = exercise.kind === 'build' ? exercise.bass : undefined;
  return (
    bass !== undefined &&
    pitchClassAt(instrumentOf(exercise), spot) === pitchClassOf(bass) &&
    isOnItsStrings(exercise, spot)
  );
}

/** A root of the position, whichever of its roots it is. */
export function isOfScale(exercise: Exercise, spot: Place): boolean {
  return (
    exercise.kind === 'scale' &&
    exercise.coverage === 'every-pitch' &&
    isRootPlace(exercise, spot) &&
    targetsOf(exercise).some(({ accepted }) => holds(accepted, spot))
  );
}
