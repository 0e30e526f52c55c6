import { perObject } from '../lib/per-object.ts';
import { midiAt, place, stringNumbers, type Instrument, type Place } from '../theory/fretboard.ts';
import { letters, midiOf, octave, type NoteName } from '../theory/pitch.ts';
import { noteOnDegree, semitonesOf, type Degree } from '../theory/interval.ts';
import { neighbourSteps, usualStep } from '../theory/string-steps.ts';
import type { Exercise } from './exercise.ts';
import { lowStringBoxes } from './low-string-box.ts';
import { instrumentOf, isRootBound, rootsOn } from './roots.ts';
import { targetsOf, type Target } from './targets.ts';
import { hasRelative, isMinorLike, twinsOf } from './twins.ts';
import type { SlipCause } from './verdict.ts';

/** What somebody who makes one slip would have answered instead of a right answer. */
export interface Hypothesis {
  readonly cause: SlipCause;
  /** Where each note of the target went. */
  readonly moved: readonly { readonly from: Place; readonly to: Place }[];
  /** How much has to be assumed: 1 is one cause, a little more where the cause is less usual or says less. */
  readonly cost: number;
}

/** A slip that moves every place by one rule. `back` undoes it. */
export interface Move {
  readonly cause: SlipCause;
  readonly cost: number;
  readonly to: (spot: Place) => Place;
  readonly back: (spot: Place) => Place;
}

/** A cause that explains a little less than others that fit as well. */
const lessLikely = 1.05;
/** A cause that says what happened, not why. */
export const saysOnlyWhat = 1.1;

/** Every single cause applied to one right answer. */
export function hypothesesFor(exercise: Exercise, target: Target): readonly Hypothesis[] {
  const moves = movesFor(
    exercise,
    rootsOf(exercise, target),
    target.notes.map((note) => note.place),
  );
  return [
    ...moves.map(({ cause, cost, to }) => moveEach(cause, cost, target, to)),
    ...otherThirds(exercise, target),
    ...lettersByTwo(exercise, target),
    ...lowStringBoxes(exercise, target),
  ];
}

/** A right answer and what every slip would make of it. */
export interface Supposed {
  readonly target: Target;
  readonly hypotheses: readonly Hypothesis[];
}

/** For each right answer that the key could show; worked out once for an exercise. */
export const supposedOf: (exercise: Exercise) => readonly Supposed[] = perObject((exercise) =>
  targetsOf(exercise).map((target) => ({ target, hypotheses: hypothesesFor(exercise, target) })),
);

/** The root of a right answer: on the root string, where that is bound, else the first there is. */
function rootsOf(exercise: Exercise, { notes }: Target): readonly Place[] {
  const roots = notes.filter((note) => note.degree === '1').map((note) => note.place);
  return [roots.find((spot) => spot.string === exercise.rootString) ?? roots[0]].filter(
    (spot) => spot !== undefined,
  );
}

function moveEach(
  cause: SlipCause,
  cost: number,
  target: Target,
  to: (spot: Place, degree: Degree) => Place,
): Hypothesis {
  return {
    cause,
    cost,
    moved: target.notes.map((note) => ({ from: note.place, to: to(note.place, note.degree) })),
  };
}

/** The slips that move a whole answer by one rule; `roots` are where a right one may have its root. */
export function movesFor(
  exercise: Exercise,
  roots: readonly Place[],
  places: readonly Place[],
): readonly Move[] {
  const instrument = instrumentOf(exercise);
  return [
    ...lowStringMap(exercise, roots),
    ...shortStep(exercise, instrument, places),
    ...reversed(exercise, instrument),
    ...mirrored(places),
    ...[1, -1].map((strings) => overStrings(strings)),
    ...octavesAway(exercise),
    ...relativeRoot(exercise),
    ...accidentalTurned(exercise),
    shift(-1, 'nut-as-one', 1),
    ...driftToMark(exercise, instrument, roots[0]),
    shift(1, 'one-fret-off', saysOnlyWhat),
  ];
}

function shift(frets: number, cause: SlipCause, cost: number): Move {
  return {
    cause,
    cost,
    to: (spot) => place(spot.string, spot.fret + frets),
    back: (spot) => place(spot.string, spot.fret - frets),
  };
}

/** The fret is the one that the root has on the last string: there the map was learnt. */
function lowStringMap(exercise: Exercise, roots: readonly Place[]): readonly Move[] {
  const last = stringNumbers(instrumentOf(exercise)).at(-1);
  if (last === undefined) return [];
  const moves = roots
    .filter((root) => root.string !== last)
    .flatMap((root) => rootsOn(exercise, last).map((mapped) => mapped.fret - root.fret));
  return [...new Set(moves)]
    .filter((frets) => frets % octave !== 0)
    .map((frets) => shift(frets, 'low-string-map', 1));
}

/** Neighbouring strings that are not as far apart as the tuning's others, counted as if they were. */
function shortStep(exercise: Exercise, instrument: Instrument, places: readonly Place[]): readonly Move[] {
  const steps = neighbourSteps(instrument);
  const usual = usualStep(steps);
  if (usual === undefined) return [];
  return steps.flatMap(({ upper, frets }): Move[] => {
    const isCrossed =
      places.some((spot) => spot.string <= upper) && places.some((spot) => spot.string > upper);
    if (frets === usual || !isCrossed) return [];
    const fromAbove = !isRootBound(exercise) || exercise.rootString <= upper;
    const on = (isLower: boolean, by: number, cost: number): Move => ({
      cause: 'short-step',
      cost,
      to: (spot) => (spot.string > upper === isLower ? place(spot.string, spot.fret + by) : spot),
      back: (spot) => (spot.string > upper === isLower ? place(spot.string, spot.fret - by) : spot),
    });
    return [
      on(true, usual - frets, fromAbove ? 1 : saysOnlyWhat),
      on(false, frets - usual, fromAbove ? saysOnlyWhat : 1),
    ];
  });
}

/** A chart read upside down. */
function reversed(exercise: Exercise, instrument: Instrument): readonly Move[] {
  const count = instrument.openStrings.length;
  // For one note a neighbour says nothing of where strings were counted from.
  const isBeside = Math.abs(count + 1 - 2 * exercise.rootString) <= 1;
  if (exercise.kind === 'find' && isRootBound(exercise) && isBeside) return [];
  const to = (spot: Place) => place(count + 1 - spot.string, spot.fret);
  return [{ cause: 'strings-reversed', cost: 1, to, back: to }];
}

/** A chart read from the bridge: frets mirrored inside their frame. */
function mirrored(places: readonly Place[]): readonly Move[] {
  const frets = places.map((spot) => spot.fret);
  const ends = Math.min(...frets) + Math.max(...frets);
  const to = (spot: Place) => place(spot.string, ends - spot.fret);
  return places.length > 1 ? [{ cause: 'frets-mirrored', cost: lessLikely, to, back: to }] : [];
}

function overStrings(strings: number): Move {
  return {
    cause: 'next-string',
    cost: lessLikely,
    to: (spot) => place(spot.string + strings, spot.fret),
    back: (spot) => place(spot.string - strings, spot.fret),
  };
}

/** Where frets are stated, the answer is rather outside them. */
function octavesAway(exercise: Exercise): readonly Move[] {
  return exercise.strictness === 'place'
    ? [octave, -octave].map((frets) => shift(frets, 'wrong-octave', 1))
    : [];
}

/** Minor third up from a minor root to its relative major, down from a major one. */
function relativeRoot(exercise: Exercise): readonly Move[] {
  if ((exercise.kind !== 'build' && exercise.kind !== 'scale') || !hasRelative(exercise)) return [];
  const third = semitonesOf('b3');
  const towards = isMinorLike(exercise) ? third : -third;
  return [shift(towards, 'relative-root', 1)];
}

/** A sharp played for a flat, or a flat for a sharp. */
function accidentalTurned(exercise: Exercise): readonly Move[] {
  const { alteration } = exercise.root;
  return alteration === 0 ? [] : [shift(-2 * alteration, 'sharp-for-flat', 1)];
}

/** One place on a fret with a mark, beside the right one that has none. */
function driftToMark(exercise: Exercise, { marks }: Instrument, root: Place | undefined): readonly Move[] {
  if (!root || exercise.kind !== 'find' || marks.includes(root.fret)) return [];
  return [1, -1]
    .filter((frets) => marks.includes(root.fret + frets))
    .map((frets) => shift(frets, 'mark-drift', 1));
}

/** Every third moved to the other kind; in a scale, every degree that differs. */
function otherThirds(exercise: Exercise, target: Target): readonly Hypothesis[] {
  return twinsOf(exercise).map(({ degrees, cause }) =>
    moveEach(cause, 1, target, (spot, own) => {
      const other = degrees.find((degree) => numberOf(degree) === numberOf(own)) ?? own;
      return place(spot.string, spot.fret + semitonesOf(other) - semitonesOf(own));
    }),
  );
}

function numberOf(degree: Degree): string {
  return degree.replace(/[b#]/g, '');
}

/** Two frets for every letter, from the open string on: the half steps E–F and B–C are missed. */
function lettersByTwo(exercise: Exercise, target: Target): readonly Hypothesis[] {
  const instrument = instrumentOf(exercise);
  if (exercise.kind === 'build' || exercise.kind === 'name') return [];
  const isOneString = new Set(target.notes.map((note) => note.place.string)).size === 1;
  if (!isOneString) return [];
  return [
    moveEach('letters-two-frets', 1, target, (spot, degree) => {
      const note = noteOnDegree(exercise.root, degree);
      const open = instrument.openStrings[spot.string - 1];
      if (!note || !open) return spot;
      const octaves = Math.floor((midiAt(instrument, spot) - midiOf(open)) / octave);
      return place(spot.string, countedByTwo(open, note) + octaves * 2 * letters.length);
    }),
  ];
}

/** The fret to which a note is counted when every letter takes two frets. */
export function countedByTwo(open: NoteName, note: NoteName): number {
  const steps =
    (letters.indexOf(note.letter) - letters.indexOf(open.letter) + letters.length) % letters.length;
  return 2 * steps + note.alteration - open.alteration;
}
