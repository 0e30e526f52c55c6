import { neededDegrees } from '../theory/chord-rule.ts';
import { distinct, instrumentById, isOnNeck, pitchClassAt, place, type Place } from '../theory/fretboard.ts';
import { formatInstrument } from '../theory/instrument-id.ts';
import { tuningTable, type TuningRow } from '../theory/tables/tunings.ts';
import { pitchClass, pitchClassOf } from '../theory/pitch.ts';
import { semitonesOf, type Degree } from '../theory/interval.ts';
import { holds } from './comparison.ts';
import type { BuildExercise, Exercise } from './exercise.ts';
import { movesFor, supposedOf, type Hypothesis, type Move, type Supposed } from './hypotheses.ts';
import { repairsOf } from './repairs.ts';
import { arePlacesRight } from './right.ts';
import { acceptedRoots, degreeOf, degreesAsked, instrumentOf, isInRange, isRootBound } from './roots.ts';
import { targetsOf, type Target } from './targets.ts';
import { twinsOf } from './twins.ts';
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
const costOfDifference = 0.6;
/** Explanations dearer than this only say that the answer lies elsewhere. */
const dearest = 2.9;
/** What says only that it lies elsewhere gives way to what says more. */
const costOfLastResort = 0.05;
/** Makes a tone too many dearer than one slip of the whole, and still cheaper than a tone that moved. */
const costOfSilencing = 0.55;
/** Right tones elsewhere, where no slip says why. */
const costOfElsewhere = 1.06;

/** Every explanation of places that are not right, in no order. */
export function explanationsOf(exercise: Exercise, places: readonly Place[]): readonly Explanation[] {
  if (places.length === 0) return [];
  const supposed = supposedFor(exercise, places);
  const found = supposed.flatMap((one) => byTarget(exercise, one, places));
  const target =
    supposed.length > 0 && isFree(exercise) ? supposed[0]?.target : nearestTarget(exercise, places);
  if (!target) return found;
  const whole = [
    ...elsewhere(exercise, places),
    ...otherScale(exercise, places),
    ...otherInstrument(exercise, places),
  ];
  return [...found, ...undone(exercise, places), ...whole.map((one) => ({ ...one, target }))];
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
  return exercise.kind === 'build' && exercise.voicing.kind !== 'form';
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
    const total = cost + costOfDifference * (codes.length + places.length - 2 * shared);
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
    // Evidence is a place that the slip alone brings in, not one that belongs there anyway.
    if (!kept.some(({ to }) => given.has(codeOf(to)) && !accepted.has(codeOf(to)))) continue;
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

/** A slip whose undoing makes the answer right, however the chord is voiced. */
function undone(exercise: Exercise, places: readonly Place[]): readonly Explanation[] {
  if (!isFree(exercise)) return [];
  const instrument = instrumentOf(exercise);
  const roots = acceptedRoots(exercise);
  const onString = roots.filter((spot) => spot.string === exercise.rootString);
  const moves = [
    ...movesFor(exercise, onString.length > 0 ? onString : roots.slice(0, 1), places),
    ...otherThird(exercise),
  ];
  return moves.flatMap(({ cause, cost, to, back }): Explanation[] => {
    const meant = places.map(back);
    if (!meant.every((spot) => isOnNeck(instrument, spot)) || !arePlacesRight(exercise, meant)) return [];
    const notes = meant.map((spot) => ({
      place: spot,
      degree: degreeOf(exercise, spot) ?? '1',
      finger: 0,
      optional: false,
    }));
    const moved = meant.map((from) => ({ from, to: to(from) }));
    return [{ cause, cost, target: { notes, accepted: meant }, moved }];
  });
}

/** The thirds moved back, in a chord with the other one. */
function otherThird(exercise: Exercise): readonly Move[] {
  const frets = semitonesOf('3') - semitonesOf('b3');
  return twinsOf(exercise).map(({ cause }): Move => {
    const [from, to, by] =
      cause === 'major-for-minor' ? (['b3', '3', frets] as const) : (['3', 'b3', -frets] as const);
    const moved = (degree: Degree, by: number) => (spot: Place) =>
      isTone(exercise, spot, degree) ? place(spot.string, spot.fret + by) : spot;
    return { cause, cost: 1, to: moved(from, by), back: moved(to, -by) };
  });
}

function isTone(exercise: Exercise, spot: Place, degree: Degree): boolean {
  const above = pitchClass(pitchClassOf(exercise.root) + semitonesOf(degree));
  return pitchClassAt(instrumentOf(exercise), spot) === above;
}

/** The answer sounds every tone of the scale that has the other third, and nothing else. */
function otherScale(exercise: Exercise, places: readonly Place[]): readonly Omit<Explanation, 'target'>[] {
  if (exercise.kind !== 'scale') return [];
  const instrument = instrumentOf(exercise);
  const sounding = new Set<number>(places.map((spot) => pitchClassAt(instrument, spot)));
  const above = (degree: Degree) => pitchClass(pitchClassOf(exercise.root) + semitonesOf(degree));
  return twinsOf(exercise)
    .filter(
      ({ degrees }) =>
        sounding.size === degrees.length && degrees.every((degree) => sounding.has(above(degree))),
    )
    .map(({ cause }) => ({ cause, cost: 1 }));
}

/** The answer would be right without the capo, or in the tuning that a player of this family usually has. */
function otherInstrument(
  exercise: Exercise,
  places: readonly Place[],
): readonly Omit<Explanation, 'target'>[] {
  const { spec, capo } = instrumentOf(exercise);
  const row: TuningRow | undefined = typeof spec.tuning === 'string' ? tuningTable[spec.tuning] : undefined;
  const frets = spec.frets;
  const isRightOn = (instrument: string) =>
    instrumentById(instrument) !== undefined && arePlacesRight({ ...exercise, instrument }, places);
  const found: Omit<Explanation, 'target'>[] = [];
  if (capo > 0 && isRightOn(formatInstrument({ ...spec, capo: 0 })))
    found.push({ cause: 'capo-ignored', cost: 1 });
  if (row?.home && isRightOn(formatInstrument({ ...spec, tuning: row.home, frets })))
    found.push({ cause: 'tuning-ignored', cost: 1 });
  return found;
}

/** Every tone of the answer is right, and it lies where it was not asked. */
function elsewhere(exercise: Exercise, places: readonly Place[]): readonly Omit<Explanation, 'target'>[] {
  const cause = causeElsewhere(exercise, places);
  return cause ? [{ cause, cost: costOfElsewhere }] : [];
}

function causeElsewhere(exercise: Exercise, places: readonly Place[]): SlipCause | undefined {
  const sounding = places.map((spot) => degreeOf(exercise, spot));
  if (sounding.some((degree) => degree === undefined)) return undefined;
  const needed = exercise.kind === 'build' ? neededDegrees(exercise.quality) : degreesAsked(exercise);
  if (!needed.every((degree) => sounding.includes(degree))) return undefined;
  if (exercise.kind === 'build' && new Set(places.map((spot) => spot.string)).size < places.length)
    return undefined;
  const { strictness, range, rootString } = exercise;
  const isBound = isRootBound(exercise);
  const roots = places.filter((spot) => spot.string === rootString && isRootTone(exercise, spot));
  if (isBound && roots.length === 0) return 'right-note-wrong-string';
  if (strictness === 'string' && !roots.some((spot) => isInRange(range, spot))) return 'outside-range';
  if (exercise.kind === 'find') {
    if (isBound && places.some((spot) => spot.string !== rootString)) return 'right-note-wrong-string';
    if (strictness === 'place') return 'wrong-octave';
    return places.every((spot) => isInRange(range, spot)) ? undefined : 'outside-range';
  }
  if (strictness === 'range' && !places.every((spot) => isInRange(range, spot))) return 'outside-range';
  if (exercise.kind !== 'build') return undefined;
  return isOverAnotherBass(exercise, places) ? 'wrong-bass' : 'wrong-form';
}

function isRootTone(exercise: Exercise, spot: Place): boolean {
  return pitchClassAt(instrumentOf(exercise), spot) === pitchClassOf(exercise.root);
}

/** Right but for the bass that was asked for. */
function isOverAnotherBass(exercise: BuildExercise, places: readonly Place[]): boolean {
  const { bass, ...anyBass } = exercise;
  return bass !== undefined && arePlacesRight(anyBass, places);
}
