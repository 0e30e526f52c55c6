import { known } from '../lib/assert.ts';
import { chordDegrees, degreeAt, neededDegrees, scaleDegrees } from '../theory/chord.ts';
import type { Degree } from '../theory/interval.ts';
import {
  instrumentById,
  pitchClassAt,
  place,
  stringNumbers,
  type FretRange,
  type Instrument,
  type Place,
  type StringNumber,
} from '../theory/fretboard.ts';
import { pitchClassOf } from '../theory/pitch.ts';
import { positionAt, scalePlaces } from '../theory/position.ts';
import { formRow, shapeAt, type ShapeNote } from '../theory/shape.ts';
import type { BuildExercise, Exercise, FindExercise, ScaleExercise } from './exercise.ts';

/** One right answer as a chart would show it, and the other places that may stand in it. */
export interface Target {
  readonly notes: readonly ShapeNote[];
  readonly accepted: readonly Place[];
}

/** The instrument of an exercise that was checked. */
export function instrumentOf(exercise: Exercise): Instrument {
  return known(instrumentById(exercise.instrument), `instrument ${exercise.instrument}`);
}

/** The degrees that belong to what is asked. */
export function degreesAsked(exercise: Exercise): readonly Degree[] {
  switch (exercise.kind) {
    case 'find':
      return ['1'];
    case 'build':
      return chordDegrees(exercise.quality);
    case 'scale':
      return scaleDegrees(exercise.scale);
  }
}

export function isInRange(range: FretRange | null, spot: Place): boolean {
  return range === null || (spot.fret >= range.low && spot.fret <= range.high);
}

/** Every place on the string that sounds the root. */
export function rootsOn(exercise: Exercise, string: StringNumber): readonly Place[] {
  const instrument = instrumentOf(exercise);
  const roots: Place[] = [];
  for (let fret = 0; fret <= instrument.fretCount; fret += 1) {
    const spot = place(string, fret);
    if (pitchClassAt(instrument, spot) === pitchClassOf(exercise.root)) roots.push(spot);
  }
  return roots;
}

/** Where the root may lie by the exercise's strictness (SPEC ROOT). */
export function acceptedRoots(exercise: Exercise): readonly Place[] {
  const { strictness, range, rootString } = exercise;
  const strings =
    strictness === 'place' || strictness === 'string' ? [rootString] : stringNumbers(instrumentOf(exercise));
  return strings.flatMap((string) => rootsOn(exercise, string)).filter((spot) => isInRange(range, spot));
}

/** The right answers that a chart can show, lowest first; what `judge` accepts besides is said there. */
export function targetsOf(exercise: Exercise): readonly Target[] {
  switch (exercise.kind) {
    case 'find':
      return findTargets(exercise);
    case 'build':
      return exercise.voicing.kind === 'form' ? formTargets(exercise) : voicingTargets(exercise, undefined);
    case 'scale':
      return scaleTargets(exercise);
  }
}

function findTargets(exercise: FindExercise): readonly Target[] {
  return acceptedRoots(exercise).map((spot) => {
    const notes = [{ place: spot, degree: '1', finger: 0, optional: false }];
    return { notes, accepted: [spot] };
  });
}

function formTargets(exercise: BuildExercise): readonly Target[] {
  const { voicing, quality, root, rootString, strictness, range } = exercise;
  const row = voicing.kind === 'form' ? formRow(voicing.form, quality, rootString) : undefined;
  if (!row) return [];
  const wholeInRange = strictness === 'range' ? range : null;
  return rootsOn(exercise, rootString)
    .filter((spot) => strictness === 'range' || isInRange(range, spot))
    .flatMap((spot) => {
      const notes = shapeAt(instrumentOf(exercise), row, root, spot);
      if (!notes?.every((note) => isInRange(wholeInRange, note.place))) return [];
      return [{ notes, accepted: notes.map((note) => note.place) }];
    });
}

/** Frets that a hand holds at once in a voicing that the project makes up. */
const voicingSpan = 3;

/** Close voicings on the strings asked for (or on `strings`), each with its root where it may lie. */
export function voicingTargets(
  exercise: BuildExercise,
  strings: readonly StringNumber[] | undefined,
): readonly Target[] {
  const instrument = instrumentOf(exercise);
  const asked = exercise.voicing.kind === 'strings' ? exercise.voicing.strings : strings;
  const degrees = chordDegrees(exercise.quality);
  const needed = neededDegrees(exercise.quality);
  const wholeInRange = exercise.strictness === 'range' ? exercise.range : null;
  const voicingsOn = (rootPlace: Place, used: readonly StringNumber[]): readonly Target[] => {
    if (!used.includes(rootPlace.string) || used.some((string) => string > instrument.openStrings.length))
      return [];
    const low = Math.max(0, rootPlace.fret - voicingSpan);
    const high = Math.min(instrument.fretCount, rootPlace.fret + voicingSpan);
    const near = scopeOf(low, high);
    const options = used.map((string): readonly ShapeNote[] =>
      near.flatMap((fret) => {
        const spot = place(string, fret);
        const degree = degreeAt(exercise.root, degrees, pitchClassAt(instrument, spot));
        const isOther = string === rootPlace.string && fret !== rootPlace.fret;
        if (degree === undefined || isOther || !isInRange(wholeInRange, spot)) return [];
        return [{ place: spot, degree, finger: 0, optional: false }];
      }),
    );
    return combinations(options)
      .filter((notes) => {
        const frets = notes.map((note) => note.place.fret);
        const isClose = Math.max(...frets) - Math.min(...frets) <= voicingSpan;
        return isClose && needed.every((degree) => notes.some((note) => note.degree === degree));
      })
      .map((notes) => ({ notes, accepted: notes.map((note) => note.place) }));
  };
  return acceptedRoots(exercise).flatMap((rootPlace) => {
    if (asked) return voicingsOn(rootPlace, asked);
    for (const run of stringRuns(instrument, rootPlace.string, [degrees.length, needed.length])) {
      const voicings = voicingsOn(rootPlace, run);
      if (voicings.length > 0) return voicings;
    }
    return [];
  });
}

function scopeOf(low: number, high: number): readonly number[] {
  return Array.from({ length: high - low + 1 }, (_, index) => low + index);
}

/** Neighbouring strings that may carry a chord of so many tones; first those that have the root in their midst. */
function stringRuns(
  instrument: Instrument,
  rootString: StringNumber,
  counts: readonly number[],
): readonly (readonly StringNumber[])[] {
  const strings = stringNumbers(instrument);
  return [...new Set(counts)].flatMap((count) => {
    const wished = Math.max(0, Math.min(rootString - 2, strings.length - count));
    return scopeOf(0, strings.length - count)
      .filter((first) => strings.slice(first, first + count).includes(rootString))
      .sort((a, b) => Math.abs(a - wished) - Math.abs(b - wished))
      .map((first) => strings.slice(first, first + count));
  });
}

function combinations<T>(options: readonly (readonly T[])[]): readonly (readonly T[])[] {
  return options.reduce<readonly (readonly T[])[]>(
    (made, choices) => made.flatMap((start) => choices.map((choice) => [...start, choice])),
    [[]],
  );
}

function scaleTargets(exercise: ScaleExercise): readonly Target[] {
  const { root, scale, rootFinger, strictness, range, coverage } = exercise;
  const instrument = instrumentOf(exercise);
  if (strictness === 'range' && range) {
    const notes = scalePlaces(instrument, root, scale, range);
    const needed = coverage === 'every-tone' ? scaleDegrees(scale) : [];
    const isWhole = needed.every((degree) => notes.some((note) => note.degree === degree));
    return notes.length > 0 && isWhole ? [{ notes, accepted: notes.map((note) => note.place) }] : [];
  }
  const fingers = coverage === 'every-pitch' ? [rootFinger] : [rootFinger, 1, 2, 4];
  return acceptedRoots(exercise).flatMap((spot) => {
    for (const finger of fingers) {
      const position = positionAt(instrument, root, scale, spot, finger);
      if (position) return [position];
    }
    return [];
  });
}
