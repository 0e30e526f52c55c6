import { perObject } from '../lib/per-object.ts';
import { holds, instrumentById, pitchClassAt, type Place } from '../theory/fretboard.ts';
import { formatInstrument } from '../theory/instrument-id.ts';
import { pitchClassOn, type Degree } from '../theory/interval.ts';
import { pitchClassOf } from '../theory/pitch.ts';
import { tuningTable, type TuningRow } from '../theory/tables/tunings.ts';
import { hasGivenShape, type Exercise } from './exercise.ts';
import type { Explanation } from './explanations.ts';
import { arePlacesRight } from './right.ts';
import { degreesAsked, instrumentOf, isInRange, isRootBound, toneAt } from './roots.ts';
import { targetsOf, tonesNeeded, type Target } from './targets.ts';
import { twinsOf } from './twins.ts';
import type { SlipCause } from './verdict.ts';

type Untargeted = Omit<Explanation, 'target'>;

/** Right tones elsewhere, where no slip says why. */
const costOfElsewhere = 1.06;
/** The note that was to be found, found elsewhere: that it is right says more than how it came there. */
const costOfFound = 0.95;

/** Causes told by what the whole answer sounds, wherever it lies. */
export function soundingOtherwise(exercise: Exercise, places: readonly Place[]): readonly Untargeted[] {
  const cause = causeElsewhere(exercise, places);
  return [
    ...(cause ? [{ cause, cost: exercise.kind === 'find' ? costOfFound : costOfElsewhere }] : []),
    ...otherScale(exercise, places),
    ...otherInstrument(exercise, places),
  ];
}

/** The answer sounds every tone of the scale that has the other third, and nothing else. */
function otherScale(exercise: Exercise, places: readonly Place[]): readonly Untargeted[] {
  if (exercise.kind !== 'scale') return [];
  const instrument = instrumentOf(exercise);
  const sounding = new Set<number>(places.map((spot) => pitchClassAt(instrument, spot)));
  const above = (degree: Degree) => pitchClassOn(exercise.root, degree);
  return twinsOf(exercise)
    .filter(
      ({ degrees }) =>
        sounding.size === degrees.length && degrees.every((degree) => sounding.has(above(degree))),
    )
    .map(({ cause }) => ({ cause, cost: 1 }));
}

/** The answer would be right without the capo, or in the tuning that a player of this family usually has. */
function otherInstrument(exercise: Exercise, places: readonly Place[]): readonly Untargeted[] {
  return onOtherInstruments(exercise)
    .filter(({ exercise: other }) => arePlacesRight(other, places))
    .map(({ cause }) => ({ cause, cost: 1 }));
}

/** The same exercise without the capo, and in the usual tuning of the family, with what answering those is called. */
export const onOtherInstruments = perObject(
  (exercise: Exercise): readonly { readonly cause: SlipCause; readonly exercise: Exercise }[] => {
    const { spec, capo } = instrumentOf(exercise);
    const row: TuningRow | undefined = typeof spec.tuning === 'string' ? tuningTable[spec.tuning] : undefined;
    const others: readonly (readonly [SlipCause, string | undefined])[] = [
      ['capo-ignored', capo > 0 ? formatInstrument({ ...spec, capo: 0 }) : undefined],
      ['tuning-ignored', row?.home ? formatInstrument({ ...spec, tuning: row.home }) : undefined],
    ];
    return others.flatMap(([cause, instrument]) =>
      instrument !== undefined && instrumentById(instrument)
        ? [{ cause, exercise: { ...exercise, instrument } }]
        : [],
    );
  },
);

/** Every tone of the answer is right, and it lies where it was not asked. */
function causeElsewhere(exercise: Exercise, places: readonly Place[]): SlipCause | undefined {
  const sounding = places.map((spot) => toneAt(exercise, spot));
  if (sounding.some((degree) => degree === undefined)) return undefined;
  const needed = exercise.kind === 'build' ? tonesNeeded(exercise) : degreesAsked(exercise);
  if (!needed.every((degree) => sounding.includes(degree))) return undefined;
  if (exercise.kind === 'build' && new Set(places.map((spot) => spot.string)).size < places.length)
    return undefined;
  const isFixed = exercise.kind === 'scale' || (exercise.kind === 'build' && hasGivenShape(exercise));
  const isPartOf = (target: Target) => places.every((spot) => holds(target.accepted, spot));
  // What only leaves places out lies where it was asked.
  if (isFixed && targetsOf(exercise).some(isPartOf)) return undefined;
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
  return 'wrong-form';
}

function isRootTone(exercise: Exercise, spot: Place): boolean {
  return pitchClassAt(instrumentOf(exercise), spot) === pitchClassOf(exercise.root);
}

/** Right but for the bass that was asked for. */
export function isOverAnotherBass(exercise: Exercise, places: readonly Place[]): boolean {
  if (exercise.kind !== 'build') return false;
  const { bass, ...anyBass } = exercise;
  return bass !== undefined && arePlacesRight(anyBass, places);
}
