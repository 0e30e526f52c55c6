import { holds, midiAt, place, stringNumbers, type Place } from '../theory/fretboard.ts';
import { pitchClassOn } from '../theory/interval.ts';
import type { MidiNote } from '../theory/pitch.ts';
import type { Answer } from './answer.ts';
import type { ScaleExercise } from './exercise.ts';
import { costOfDifference, costOfLastResort, mostCounted } from './explanations.ts';
import { isFingerRight } from './right.ts';
import { heardCauses, type HeardCause } from './heard-causes.ts';
import { firstAstray } from './heard-order.ts';
import {
  isOfScale,
  isRootPlace,
  isTapAsked,
  mayBeRoot,
  rootTapCause,
  tapMarks,
  tapped,
} from './heard-taps.ts';
import { semitonesTo, soundAt, soundOf } from './hearing.ts';
import { isPitchInOrder } from './order.ts';
import { acceptedRoots, degreesAsked, instrumentOf, isInRange, isRootBound } from './roots.ts';
import { likeliest, markCause } from './slips.ts';
import { targetsOf, type Target } from './targets.ts';
import type { HeardFault, SlipCause, Verdict } from './verdict.ts';

/** Which notes are not there, and which should not be. */
interface SoundFault {
  readonly missing: readonly number[];
  readonly foreign: readonly number[];
}

/** The verdict on a scale that was heard (SPEC HEARD-6). */
export function judgeHeardScale(
  exercise: ScaleExercise,
  answer: Answer,
  pitches: readonly MidiNote[],
): Verdict {
  const sounds = [...new Set(pitches.map((pitch) => soundOf(exercise, pitch)))];
  const tap = tapped(exercise, answer, 'root');
  const target = targetFor(exercise, sounds, tap);
  const fault = faultIn(exercise, target, sounds);
  const isSound = fault.missing.length === 0 && fault.foreign.length === 0;
  const cause = isSound ? besides(exercise, answer, pitches) : undefined;
  if (isSound && !cause) return { kind: 'right' };
  const { best, rival } = cause
    ? { best: { cause }, rival: undefined }
    : likeliest([plainCause(exercise, fault, tap), ...heardCauses(exercise, sounds, tap)]);
  const marks = tapMarks(exercise, answer);
  const isLine = !isSound || cause === 'wrong-order';
  const heard: HeardFault = isLine ? firstAstray(exercise, pitches, { ...fault, target }) : { kind: 'line' };
  if (best && rival) return { kind: 'unclear', causes: [best.cause, rival.cause], marks, missing: [], heard };
  return { kind: 'slip', cause: best?.cause ?? 'other-place', marks, corrections: [], missing: [], heard };
}

/** The right answer that it is held against: that of the tapped root, else the one from which least differs. */
function targetFor(
  exercise: ScaleExercise,
  sounds: readonly number[],
  tap: Place | undefined,
): Target | undefined {
  const all = targetsOf(exercise);
  const differences = (target: Target) => {
    const { missing, foreign } = faultIn(exercise, target, sounds);
    return missing.length + foreign.length;
  };
  const [nearest] = all.toSorted((a, b) => differences(a) - differences(b));
  if (!nearest || differences(nearest) === 0) return nearest;
  return all.find(({ accepted }) => tap && isRootPlace(exercise, tap) && holds(accepted, tap)) ?? nearest;
}

function faultIn(exercise: ScaleExercise, target: Target | undefined, sounds: readonly number[]): SoundFault {
  const degrees = degreesAsked(exercise).map((degree): number => pitchClassOn(exercise.root, degree));
  const isWhole = exercise.coverage === 'every-pitch' && target;
  const needed = isWhole
    ? target.notes.filter((note) => !note.optional).map((note) => soundAt(exercise, note.place))
    : degrees;
  const accepted = isWhole ? target.accepted.map((spot) => soundAt(exercise, spot)) : degrees;
  return {
    missing: [...new Set(needed)].filter((sound) => !sounds.includes(sound)),
    foreign: sounds.filter((sound) => !accepted.includes(sound)),
  };
}

/** Every note is right; what else was asked is perhaps not. */
function besides(
  exercise: ScaleExercise,
  answer: Answer,
  pitches: readonly MidiNote[],
): SlipCause | undefined {
  return (
    outsideCause(exercise, pitches) ??
    (isPitchInOrder(exercise, pitches) ? undefined : 'wrong-order') ??
    tapCause(exercise, answer, pitches) ??
    (isFingerRight(exercise, answer) ? undefined : 'wrong-finger')
  );
}

/** Tones of the scale in octaves that the words leave out. */
function outsideCause(exercise: ScaleExercise, pitches: readonly MidiNote[]): SlipCause | undefined {
  if (exercise.coverage === 'every-pitch') return undefined;
  const instrument = instrumentOf(exercise);
  if (exercise.strictness === 'range') {
    const { range } = exercise;
    const open = stringNumbers(instrument).map((string) => midiAt(instrument, place(string, 0)));
    const isInside = (pitch: MidiNote) =>
      open.some((low, index) => isInRange(range, place(index + 1, pitch - low)));
    return pitches.every(isInside) ? undefined : 'outside-range';
  }
  const isRootHeard = acceptedRoots(exercise).some((spot) => pitches.includes(midiAt(instrument, spot)));
  return isRootBound(exercise) && !isRootHeard ? 'wrong-octave' : undefined;
}

function tapCause(
  exercise: ScaleExercise,
  answer: Answer,
  pitches: readonly MidiNote[],
): SlipCause | undefined {
  if (!isTapAsked(exercise, 'root')) return undefined;
  const tap = tapped(exercise, answer, 'root');
  if (!tap) return 'untapped';
  if (!isRootPlace(exercise, tap)) return markCause(exercise, tap);
  const instrument = instrumentOf(exercise);
  const tapPitch = midiAt(instrument, tap);
  const isElsewhere = (root: Place) => {
    const pitch = midiAt(instrument, root);
    return pitch !== tapPitch && pitches.includes(pitch);
  };
  const sounds = pitches.map((pitch) => soundOf(exercise, pitch));
  const mayLie =
    exercise.coverage === 'every-pitch'
      ? targetsOf(exercise).some(
          (target) => holds(target.accepted, tap) && isClean(faultIn(exercise, target, sounds)),
        )
      : mayBeRoot(exercise, tap) ||
        // Beside a bound root others may sound, and be tapped.
        (isRootBound(exercise) && acceptedRoots(exercise).some(isElsewhere));
  if (mayLie && pitches.includes(tapPitch)) return undefined;
  const cause = rootTapCause(exercise, tap);
  // A root in another octave than the one that sounded.
  return cause === 'right-note-wrong-string' || cause === 'outside-range' ? cause : 'wrong-root-mark';
}

function isClean({ missing, foreign }: SoundFault): boolean {
  return missing.length === 0 && foreign.length === 0;
}

/** What to call a line that is the scale but for some notes. */
function plainCause(
  exercise: ScaleExercise,
  { missing, foreign }: SoundFault,
  tap: Place | undefined,
): HeardCause {
  const [lost, found] = [missing[0], foreign[0]];
  const astray = tap && !mayBeRoot(exercise, tap) && !isOfScale(exercise, tap) ? 1 : 0;
  const cost = costOfDifference * (missing.length + foreign.length + astray);
  const counted = Math.min(cost, costOfDifference * mostCounted);
  if (foreign.length === 0) return { cause: 'missing-tone', cost: counted };
  if (missing.length === 0) return { cause: 'extra-tone', cost: counted };
  const isOne = missing.length === 1 && foreign.length === 1 && lost !== undefined && found !== undefined;
  if (isOne && Math.abs(distance(exercise, lost, found)) === 1) return { cause: 'one-fret-off', cost };
  return foreign.length > missing.length
    ? { cause: 'extra-tone', cost }
    : { cause: 'other-place', cost: cost + costOfLastResort };
}

function distance(exercise: ScaleExercise, from: number, to: number): number {
  return exercise.coverage === 'every-pitch' ? to - from : semitonesTo(from, to);
}
