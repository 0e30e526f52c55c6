import { degreeAt, neededDegrees } from '../theory/chord.ts';
import { known } from '../lib/assert.ts';
import { distinct, pitchClassAt, samePlace, type Place } from '../theory/fretboard.ts';
import { pitchClassOf } from '../theory/pitch.ts';
import type { Exercise } from './exercise.ts';
import { difference, hypothesesFor, twinDegrees, type Hypothesis } from './hypotheses.ts';
import { degreesAsked, instrumentOf, isInRange, targetsOf, voicingTargets, type Target } from './targets.ts';
import type { Correction, PlaceMark, SlipCause, Verdict } from './verdict.ts';

interface Explanation {
  readonly cause: SlipCause;
  readonly cost: number;
  readonly target: Target;
  /** Which place stands for which, where the cause says so. */
  readonly moved?: Hypothesis['moved'];
}

/** What each place too many or too few adds to an explanation; two of them weigh more than another single cause. */
const costOfDifference = 0.6;

/** Explanations dearer than this only say that the answer lies elsewhere. */
const dearest = 2.9;

/**
 * The one cause that explains the whole answer with the fewest assumptions (SPEC SLIP-1, SLIP-2). Two that explain it equally
 * well make it unclear.
 */
export function slipIn(exercise: Exercise, places: readonly Place[]): Verdict {
  const targets = targetsFor(exercise, places);
  const nearest = known(nearestTarget(targets, places), 'target of a checked exercise');
  const explanations = explain(exercise, targets, places).sort((a, b) => a.cost - b.cost);
  const best: Explanation = explanations[0] ?? { cause: 'other-place', cost: dearest, target: nearest };
  const rival = explanations.find((other) => other.cause !== best.cause && other.cost - best.cost < 0.01);
  const { marks, corrections, missing } = comparison(best, places);
  if (places.length === 0) return { kind: 'slip', cause: 'missing-tone', marks, corrections, missing };
  if (rival) return { kind: 'unclear', causes: [best.cause, rival.cause], marks, missing };
  return { kind: 'slip', cause: best.cause, marks, corrections, missing };
}

/** The right answers to compare with; where any voicing goes, also those on the strings of the answer. */
function targetsFor(exercise: Exercise, places: readonly Place[]): readonly Target[] {
  const shown = targetsOf(exercise);
  if (exercise.kind !== 'build' || exercise.voicing.kind !== 'any' || places.length === 0) return shown;
  const strings = [...new Set(places.map((spot) => spot.string))];
  return [...voicingTargets(exercise, strings), ...shown];
}

function nearestTarget(targets: readonly Target[], places: readonly Place[]): Target | undefined {
  const distance = (target: Target) =>
    places.reduce(
      (sum, spot) => sum + Math.min(...target.notes.map((note) => stepsBetween(note.place, spot))),
      0,
    );
  return [...targets].sort((a, b) => distance(a) - distance(b))[0];
}

function stepsBetween(a: Place, b: Place): number {
  return Math.abs(a.fret - b.fret) + 2 * Math.abs(a.string - b.string);
}

function explain(exercise: Exercise, targets: readonly Target[], places: readonly Place[]): Explanation[] {
  const explanations: Explanation[] = [];
  const consider = (
    cause: SlipCause,
    target: Target,
    supposed: readonly Place[],
    cost: number,
    moved: Hypothesis['moved'] = [],
  ) => {
    const shared = places.filter((spot) => isGiven(supposed, spot)).length;
    if (shared === 0 || shared < places.length / 2) return;
    const total = cost + costOfDifference * difference(supposed, places);
    if (total < dearest) explanations.push({ cause, cost: total, target, moved });
  };
  for (const target of targets) {
    const needed = target.notes.filter((note) => !note.optional).map((note) => note.place);
    const own = [
      ...needed,
      ...places.filter((spot) => target.accepted.some((place) => samePlace(place, spot))),
    ];
    consider(plainCause(exercise, own, places), target, distinct(own), 0);
    for (const { cause, moved, cost } of hypothesesFor(exercise, target)) {
      const kept = moved.filter(
        ({ from, to }) => needed.some((spot) => samePlace(spot, from)) || isGiven(places, to),
      );
      if (kept.every(({ from, to }) => samePlace(from, to))) continue;
      consider(
        cause,
        target,
        kept.map(({ to }) => to),
        cost,
        kept,
      );
    }
  }
  const nearest = nearestTarget(targets, places);
  const elsewhere = rightTonesElsewhere(exercise, places);
  if (elsewhere && nearest) explanations.push({ cause: elsewhere, cost: 1.05, target: nearest });
  const twin = twinDegrees(exercise);
  if (twin && nearest && soundsAll(exercise, twin.degrees, places)) {
    explanations.push({ cause: twin.cause, cost: 1, target: nearest });
  }
  return explanations;
}

/** Whether the answer sounds every one of these degrees and nothing else. */
function soundsAll(exercise: Exercise, degrees: readonly string[], places: readonly Place[]): boolean {
  const instrument = instrumentOf(exercise);
  const sounding = places.map((spot) => degreeAt(exercise.root, degrees, pitchClassAt(instrument, spot)));
  return (
    sounding.every((degree) => degree !== undefined) && degrees.every((degree) => sounding.includes(degree))
  );
}

function isGiven(places: readonly Place[], spot: Place): boolean {
  return places.some((given) => samePlace(given, spot));
}

/** What to call an answer that is a right one but for some places. */
function plainCause(exercise: Exercise, target: readonly Place[], places: readonly Place[]): SlipCause {
  const missing = distinct(target).filter((spot) => !isGiven(places, spot));
  const extra = places.filter((spot) => !isGiven(target, spot));
  if (extra.length === 0) return 'missing-tone';
  if (missing.length === 0) return 'extra-tone';
  const [lost] = missing;
  const [found] = extra;
  const single = missing.length === 1 && extra.length === 1 && lost && found && lost.string === found.string;
  if (single && Math.abs(lost.fret - found.fret) === 1) return 'one-fret-off';
  return exercise.kind === 'scale' && extra.length > missing.length ? 'extra-tone' : 'other-place';
}

/** Every tone of the answer is right, and it lies where it was not asked. */
function rightTonesElsewhere(exercise: Exercise, places: readonly Place[]): SlipCause | undefined {
  const instrument = instrumentOf(exercise);
  const degrees = degreesAsked(exercise);
  const sounding = places.map((spot) => degreeAt(exercise.root, degrees, pitchClassAt(instrument, spot)));
  if (places.length === 0 || sounding.some((degree) => degree === undefined)) return undefined;
  if (!neededOf(exercise).every((degree) => sounding.includes(degree))) return undefined;
  if (exercise.kind === 'build' && new Set(places.map((spot) => spot.string)).size < places.length)
    return undefined;
  const { strictness, range, rootString } = exercise;
  const isBound = strictness === 'place' || strictness === 'string';
  const onRootString = places.filter((spot) => spot.string === rootString);
  const roots = onRootString.filter((spot) => pitchClassAt(instrument, spot) === pitchClassOf(exercise.root));
  if (isBound && roots.length === 0) return 'right-note-wrong-string';
  if (strictness === 'string' && !roots.some((spot) => isInRange(range, spot))) return 'outside-range';
  if (exercise.kind === 'find') {
    if (isBound && places.some((spot) => spot.string !== rootString)) return 'right-note-wrong-string';
    return strictness === 'place' ? 'wrong-octave' : 'outside-range';
  }
  if (strictness === 'range' && !places.every((spot) => isInRange(range, spot))) return 'outside-range';
  return exercise.kind === 'build' ? 'wrong-form' : undefined;
}

function neededOf(exercise: Exercise): readonly string[] {
  return exercise.kind === 'build' ? neededDegrees(exercise.quality) : degreesAsked(exercise);
}

/**
 * The answer held against a right one: first as the cause moved its notes, then string by string, then what is left
 * over of a single note.
 */
function comparison(
  { target, moved = [] }: Explanation,
  places: readonly Place[],
): {
  readonly marks: readonly PlaceMark[];
  readonly corrections: readonly Correction[];
  readonly missing: readonly Place[];
} {
  const marks = places.map((spot) => ({ place: spot, right: isGiven(target.accepted, spot) }));
  let open = target.notes
    .filter((note) => !note.optional && !isGiven(places, note.place))
    .map((note) => note.place);
  const corrections: Correction[] = [];
  const correct = (from: Place, to: Place | undefined): boolean => {
    if (!to) return false;
    corrections.push({ from, to });
    open = open.filter((spot) => !samePlace(spot, to));
    return true;
  };
  const astray: Place[] = [];
  for (const { place: from, right } of marks) {
    if (right) continue;
    const meant = moved.find(({ to }) => samePlace(to, from))?.from;
    // What it stands for is there already: nothing to correct it to.
    if (meant && isGiven(places, meant)) continue;
    if (!correct(from, meant ?? nearestOn(open, from))) astray.push(from);
  }
  const [from] = astray;
  if (from && astray.length === 1 && open.length === 1) correct(from, open[0]);
  return { marks, corrections, missing: open };
}

/** Of these places, the one on the same string that is fewest frets away. */
function nearestOn(spots: readonly Place[], from: Place): Place | undefined {
  return spots
    .filter((spot) => spot.string === from.string)
    .sort((a, b) => Math.abs(a.fret - from.fret) - Math.abs(b.fret - from.fret))[0];
}
