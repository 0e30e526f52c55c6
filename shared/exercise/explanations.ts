import { distinct, holds, type Place } from '../theory/fretboard.ts';
import { hasGivenShape, type BuildExercise, type Exercise } from './exercise.ts';
import { supposedOf, type Hypothesis, type Supposed } from './hypotheses.ts';
import { repairsOf } from './repairs.ts';
import { isOverAnotherBass, soundingOtherwise } from './sounding-otherwise.ts';
import { targetsOf, type Target } from './targets.ts';
import { undoneMoves } from './undone-moves.ts';
import type { SlipCause } from './verdict.ts';

/** One cause that may have made this answer of a right one. */
export interface Explanation {
  readonly cause: SlipCause;
  readonly cost: number;
  readonly target: Target;
  /** Which place stands for which, where the cause says so. */
  readonly moved?: Hypothesis['moved'];
}

/** What each place too many or too few adds to an explanation; two of them weigh more than another single cause. */
export const costOfDifference = 0.6;
/** Of places only left out or only added no more are counted. */
export const mostCounted = 4;
/** Explanations dearer than this only say that the answer lies elsewhere. */
export const dearest = 2.9;
/** What says only that it lies elsewhere gives way to what says more. */
export const costOfLastResort = 0.05;
/** Makes a tone too many dearer than one slip of the whole, and still cheaper than a tone that moved. */
const costOfSilencing = 0.55;

/** Every explanation of places that are not right, in no order. */
export function explanationsOf(exercise: Exercise, places: readonly Place[]): readonly Explanation[] {
  if (places.length === 0) return [];
  if (isOverAnotherBass(exercise, places)) return wrongBass(exercise, places);
  const supposed = supposedFor(exercise, places);
  const found = supposed.flatMap((one) => byTarget(exercise, one, places));
  const target =
    supposed.length > 0 && isFree(exercise) ? supposed[0]?.target : nearestTarget(exercise, places);
  if (!target) return found;
  const undone = isFree(exercise) ? undoneMoves(exercise, places) : [];
  const whole = soundingOtherwise(exercise, places).map((one) => ({ ...one, target }));
  return [...found, ...undone, ...whole];
}

/** The chord is right, and nothing has to be explained but its bass. */
function wrongBass(exercise: Exercise, places: readonly Place[]): readonly Explanation[] {
  const target = nearestTarget(exercise, places);
  return target ? [{ cause: 'wrong-bass', cost: 0, target }] : [];
}

/** The right answer whose notes lie nearest to these places. */
export function nearestTarget(exercise: Exercise, places: readonly Place[]): Target | undefined {
  let nearest: Target | undefined;
  let least = Infinity;
  for (const target of targetsOf(exercise)) {
    const distance = places.reduce(
      (sum, spot) => sum + Math.min(...target.notes.map((note) => stepsBetween(note.place, spot))),
      0,
    );
    if (distance < least) [nearest, least] = [target, distance];
  }
  return nearest;
}

function stepsBetween(a: Place, b: Place): number {
  return Math.abs(a.fret - b.fret) + 2 * Math.abs(a.string - b.string);
}

/** Whether a chord may be voiced otherwise than a chart shows it. */
function isFree(exercise: Exercise): exercise is BuildExercise {
  return exercise.kind === 'build' && !hasGivenShape(exercise);
}

/** The right answers to compare with: those that a chart shows, or the voicings next to this one. */
function supposedFor(exercise: Exercise, places: readonly Place[]): readonly Supposed[] {
  if (!isFree(exercise)) return supposedOf(exercise);
  return repairsOf(exercise, places).map((target) => ({ target, hypotheses: [] }));
}

/** The answer as this right one with places missing or added, and as each slip would have made it. */
function byTarget(
  exercise: Exercise,
  { target, hypotheses }: Supposed,
  places: readonly Place[],
): readonly Explanation[] {
  const given = new Set(places.map(codeOf));
  const found: Explanation[] = [];
  const consider = (
    cause: SlipCause,
    codes: readonly number[],
    cost: number,
    moved?: Hypothesis['moved'],
  ) => {
    const shared = codes.filter((code) => given.has(code)).length;
    if (shared === 0 || shared < places.length / 2) return;
    const [missing, extra] = [codes.length - shared, places.length - shared];
    // However much is only left out, or only added, that is what it is.
    const differences =
      missing === 0 || extra === 0 ? Math.min(missing + extra, mostCounted) : missing + extra;
    const total = cost + costOfDifference * differences;
    if (total < dearest) found.push({ cause, cost: total, target, ...(moved ? { moved } : {}) });
  };
  const accepted = new Set(target.accepted.map(codeOf));
  const needed = new Set(target.notes.filter((note) => !note.optional).map((note) => codeOf(note.place)));
  const own = distinct([
    ...target.notes.filter((note) => !note.optional).map((note) => note.place),
    ...places.filter((spot) => holds(target.accepted, spot)),
  ]);
  const plain = plainCause(exercise, target, own, places);
  consider(plain, own.map(codeOf), plainCost(exercise, plain));
  for (const { cause, moved, cost } of hypotheses) {
    const kept = moved.filter(({ from, to }) => needed.has(codeOf(from)) || given.has(codeOf(to)));
    // Evidence are the places that the slip alone brings in, not those that belong there anyway: most are given.
    const telling = kept.filter(({ to }) => !accepted.has(codeOf(to)));
    const seen = telling.filter(({ to }) => given.has(codeOf(to))).length;
    if (seen === 0 || (exercise.kind !== 'find' && 2 * seen <= telling.length)) continue;
    consider(cause, [...new Set(kept.map(({ to }) => codeOf(to)))], cost, kept);
  }
  return found;
}

/** A chord that may be voiced otherwise becomes right by silencing a string too easily for that to say much. */
function plainCost(exercise: Exercise, cause: SlipCause): number {
  if (cause === 'other-place') return costOfLastResort;
  return isFree(exercise) && exercise.voicing.kind === 'any' && cause === 'extra-tone' ? costOfSilencing : 0;
}

/** One number for a place, also off the neck. */
function codeOf({ string, fret }: Place): number {
  return string * 1000 + fret;
}

/** What to call an answer that is a right one but for some places. */
function plainCause(
  exercise: Exercise,
  target: Target,
  own: readonly Place[],
  places: readonly Place[],
): SlipCause {
  const missing = own.filter((spot) => !holds(places, spot));
  const extra = places.filter((spot) => !holds(own, spot));
  const isChart = exercise.kind === 'build' && exercise.voicing.kind !== 'any';
  const isOn = (spots: readonly Place[], string: number) => spots.some((spot) => spot.string === string);
  if (extra.length === 0) {
    const isMuted = missing.every((spot) => !isOn(places, spot.string));
    return isChart && isMuted ? 'sounding-string-muted' : 'missing-tone';
  }
  if (missing.length === 0) {
    const isSilent = extra.every((spot) => !isOn(target.accepted, spot.string));
    return isChart && isSilent ? 'muted-string-sounded' : 'extra-tone';
  }
  const [lost] = missing;
  const [found] = extra;
  const single = missing.length === 1 && extra.length === 1 && lost && found && lost.string === found.string;
  if (single && Math.abs(lost.fret - found.fret) === 1) return 'one-fret-off';
  return exercise.kind === 'scale' && extra.length > missing.length ? 'extra-tone' : 'other-place';
}
