import { chordDegrees, scaleDegrees } from '../theory/chord.ts';
import { semitonesOf, type Degree } from '../theory/interval.ts';
import { midiOf } from '../theory/pitch.ts';
import { pitchClassAt, place, samePlace, type Instrument, type Place } from '../theory/fretboard.ts';
import type { ChordQuality } from '../theory/tables/chords.ts';
import type { ScaleId } from '../theory/tables/scales.ts';
import type { Exercise } from './exercise.ts';
import { instrumentOf, rootsOn, type Target } from './targets.ts';
import type { SlipCause } from './verdict.ts';

/** What somebody who makes one slip would have answered instead of a right answer. */
export interface Hypothesis {
  readonly cause: SlipCause;
  /** Where each note of the target went; null is left out. */
  readonly moved: readonly { readonly from: Place; readonly to: Place }[];
  /** How much has to be assumed; 1 is one single cause. */
  readonly cost: number;
}

/** Every single cause applied to one right answer. */
export function hypothesesFor(exercise: Exercise, target: Target): readonly Hypothesis[] {
  return [
    ...stringSixMap(exercise, target),
    ...shortStep(exercise, target),
    ...otherThird(exercise, target),
    reversed(exercise, target),
    ...octavesAway(exercise, target),
    ...[1, -1].map((frets) => shifted(target, frets, 'one-fret-off', 1)),
  ];
}

function moveEach(
  cause: SlipCause,
  target: Target,
  cost: number,
  move: (spot: Place, index: number) => Place,
): Hypothesis {
  return {
    cause,
    cost,
    moved: target.notes.map((note, index) => ({ from: note.place, to: move(note.place, index) })),
  };
}

function shifted(target: Target, frets: number, cause: SlipCause, cost: number): Hypothesis {
  return moveEach(cause, target, cost, (spot) => place(spot.string, spot.fret + frets));
}

/** Where frets are stated, the answer is rather outside them. */
function octavesAway(exercise: Exercise, target: Target): readonly Hypothesis[] {
  return exercise.strictness === 'place'
    ? [12, -12].map((frets) => shifted(target, frets, 'wrong-octave', 1))
    : [];
}

/** The fret is the one that the note has on the lowest string (and, in most tunings, on string 1). */
function stringSixMap(exercise: Exercise, target: Target): readonly Hypothesis[] {
  const instrument = instrumentOf(exercise);
  const root = target.notes.find((note) => note.degree === '1' && note.place.string === exercise.rootString);
  const lowest = place(instrument.openStrings.length, 0);
  if (!root || pitchClassAt(instrument, lowest) === pitchClassAt(instrument, place(exercise.rootString, 0)))
    return [];
  return rootsOn(exercise, lowest.string).map((mapped) =>
    shifted(target, mapped.fret - root.place.fret, 'string-6-map', 1),
  );
}

/** Pairs of neighbouring strings that are closer than the tuning's usual step: string 3 to 2 on a guitar. */
export function shortSteps(
  instrument: Instrument,
): readonly { readonly upper: number; readonly frets: number }[] {
  const steps = instrument.openStrings.slice(1).map((lower, index) => {
    const upper = instrument.openStrings[index];
    return { upper: index + 1, frets: upper ? midiOf(upper) - midiOf(lower) : 0 };
  });
  const usual = Math.max(...steps.map((step) => step.frets));
  return steps.filter((step) => step.frets === usual - 1);
}

/** Counted across the short step as if it were like the others. */
function shortStep(exercise: Exercise, target: Target): readonly Hypothesis[] {
  const rootFirst = exercise.strictness === 'place' || exercise.strictness === 'string';
  return shortSteps(instrumentOf(exercise)).flatMap(({ upper }) => {
    const strings = target.notes.map((note) => note.place.string);
    const crosses = strings.some((string) => string <= upper) && strings.some((string) => string > upper);
    if (!crosses) return [];
    const fromAbove = rootFirst ? exercise.rootString <= upper : true;
    const lowerHigh = moveEach('string-3-to-2-step', target, fromAbove ? 1 : 1.1, (spot) =>
      spot.string > upper ? place(spot.string, spot.fret + 1) : spot,
    );
    const upperLow = moveEach('string-3-to-2-step', target, fromAbove ? 1.1 : 1, (spot) =>
      spot.string <= upper ? place(spot.string, spot.fret - 1) : spot,
    );
    return [lowerHigh, upperLow];
  });
}

const chordTwins: Readonly<Partial<Record<ChordQuality, ChordQuality>>> = {
  major: 'minor',
  minor: 'major',
  '7': 'm7',
  m7: '7',
};
/** The scale with the other third that a student is likely to take for this one. */
export const twinScales: Readonly<Record<ScaleId, ScaleId>> = {
  major: 'natural-minor',
  'natural-minor': 'major',
  'major-pentatonic': 'minor-pentatonic',
  'minor-pentatonic': 'major-pentatonic',
};

/** The degrees of the chord or scale with the other third, where there is one; and which slip playing it is. */
export function twinDegrees(
  exercise: Exercise,
): { readonly degrees: readonly string[]; readonly cause: SlipCause } | undefined {
  if (exercise.kind === 'find') return undefined;
  const own = exercise.kind === 'build' ? chordDegrees(exercise.quality) : scaleDegrees(exercise.scale);
  const twin = exercise.kind === 'build' ? chordTwins[exercise.quality] : twinScales[exercise.scale];
  if (!twin) return undefined;
  const degrees =
    exercise.kind === 'build' ? chordDegrees(twin as ChordQuality) : scaleDegrees(twin as ScaleId);
  return { degrees, cause: own.includes('b3') ? 'major-for-minor' : 'minor-for-major' };
}

/** Every third moved to the other kind; in a scale, every degree that differs. */
function otherThird(exercise: Exercise, target: Target): readonly Hypothesis[] {
  const twin = twinDegrees(exercise);
  if (!twin) return [];
  return [
    moveEach(twin.cause, target, 1, (spot, index) => {
      const own = target.notes[index]?.degree ?? '1';
      const other = twin.degrees.find((degree) => degreeNumber(degree) === degreeNumber(own)) ?? own;
      return place(spot.string, spot.fret + semitonesOf(other) - semitonesOf(own));
    }),
  ];
}

function degreeNumber(degree: Degree): string {
  return degree.replace(/[b#]/g, '');
}

/** A chart read upside down. */
function reversed(exercise: Exercise, target: Target): Hypothesis {
  const strings = instrumentOf(exercise).openStrings.length;
  return moveEach('strings-reversed', target, 1, (spot) => place(strings + 1 - spot.string, spot.fret));
}

/** How far an answer is from a hypothesis: places that only one of the two has. */
export function difference(moved: readonly Place[], places: readonly Place[]): number {
  const missing = moved.filter((spot) => !places.some((given) => samePlace(given, spot)));
  const extra = places.filter((spot) => !moved.some((expected) => samePlace(expected, spot)));
  return missing.length + extra.length;
}
