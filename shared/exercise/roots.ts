import { known } from '../lib/assert.ts';
import { perObject } from '../lib/per-object.ts';
import { chordDegrees, degreeAt } from '../theory/chord.ts';
import { toneDegrees } from '../theory/tone-sets.ts';
import {
  instrumentById,
  pitchClassAt,
  stringNumbers,
  type FretRange,
  type Instrument,
  type Place,
  type StringNumber,
} from '../theory/fretboard.ts';
import { pitchClassOn, type Degree } from '../theory/interval.ts';
import { octave, pitchClassOf, type PitchClass } from '../theory/pitch.ts';
import { rootPlaces } from '../theory/root-places.ts';
import { namedDegrees } from './answer.ts';
import type { BuildExercise, Exercise } from './exercise.ts';

/** The instrument of an exercise that was checked. */
export const instrumentOf: (exercise: Exercise) => Instrument = perObject((exercise) =>
  known(instrumentById(exercise.instrument), `instrument ${exercise.instrument}`),
);

/** The degrees that belong to what is asked. */
export const degreesAsked: (exercise: Exercise) => readonly Degree[] = perObject((exercise) => {
  switch (exercise.kind) {
    case 'find':
      return ['1'];
    case 'name':
      return namedDegrees;
    case 'build':
      return [...chordDegrees(exercise.quality), ...foreignBass(exercise)];
    case 'scale':
      return toneDegrees(exercise.scale);
  }
});

/** The degree of a slash chord's bass that the chord itself doesn't have. */
function foreignBass({ root, quality, bass }: BuildExercise): readonly Degree[] {
  if (!bass || degreeAt(root, chordDegrees(quality), pitchClassOf(bass)) !== undefined) return [];
  const degree = degreeAt(root, namedDegrees, pitchClassOf(bass));
  return degree === undefined ? [] : [degree];
}

/** For each pitch class the degree that it is of what is asked. */
const degreeTable = perObject((exercise: Exercise): readonly (Degree | undefined)[] => {
  const degrees = degreesAsked(exercise);
  return Array.from({ length: octave }, (_, sounding) =>
    degrees.find((degree) => pitchClassOn(exercise.root, degree) === sounding),
  );
});

/** The degree that a tone is of what is asked, or undefined where it is foreign. */
export function toneOf(exercise: Exercise, sounding: PitchClass): Degree | undefined {
  return degreeTable(exercise)[sounding];
}

/** The degree of what is asked that sounds at the place, or undefined where it is foreign. */
export function toneAt(exercise: Exercise, spot: Place): Degree | undefined {
  return toneOf(exercise, pitchClassAt(instrumentOf(exercise), spot));
}

/** Whether the place on the root string counts as the root, for its own string alone. */
export function isRootBound({ strictness }: Exercise): boolean {
  return strictness === 'place' || strictness === 'string';
}

export function isInRange(range: FretRange | null, spot: Place): boolean {
  return range === null || (spot.fret >= range.low && spot.fret <= range.high);
}

/** Every place on the string that sounds the root. */
export function rootsOn(exercise: Exercise, string: StringNumber): readonly Place[] {
  return rootPlaces(instrumentOf(exercise), exercise.root, string);
}

/** Where the root may lie by the exercise's strictness (SPEC ROOT). */
export const acceptedRoots: (exercise: Exercise) => readonly Place[] = perObject((exercise) => {
  const strings = isRootBound(exercise) ? [exercise.rootString] : stringNumbers(instrumentOf(exercise));
  return strings
    .flatMap((string) => rootsOn(exercise, string))
    .filter((spot) => isInRange(exercise.range, spot));
});
