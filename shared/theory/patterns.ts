import { known } from '../lib/assert.ts';
import {
  isOnNeck,
  midiAt,
  place,
  stringNumbers,
  type Fret,
  type Instrument,
  type Place,
  type StringNumber,
} from './fretboard.ts';
import { semitonesOf, type Degree } from './interval.ts';
import { octave, pitchClass, type NoteName } from './pitch.ts';
import { scalePlaces, type Position } from './position.ts';
import { isRootAt } from './root-places.ts';
import type { ShapeNote } from './shape.ts';
import { isReentrant } from './string-steps.ts';
import { toneDegrees, type ToneSetId } from './tone-sets.ts';

export interface PatternChoice {
  /** On each string. */
  readonly notes: 2 | 3 | 4;
  /** Which of them, counted from 1, the root is on its string. */
  readonly rootAt: number;
}

/** The same number of notes on every string. Fingers are left open: the hand moves along. */
export interface Pattern extends Position {
  readonly rootAt: number;
}

/**
 * The pattern in which the root at this place is the `rootAt`-th note on its string, and every pitch of the scale or
 * arpeggio follows the one before across all strings: `patternAt(standardGuitar, a, 'minor-pentatonic', place(6, 5),
 * { notes: 2, rootAt: 1 })` has frets 5 and 8 on string 6. Undefined where a fret lies outside the neck, where the place
 * sounds no root, and on re-entrant strings, over which pitches don't follow one another.
 */
export function patternAt(
  instrument: Instrument,
  root: NoteName,
  tones: ToneSetId,
  rootPlace: Place,
  { notes: perString, rootAt }: PatternChoice,
): Pattern | undefined {
  if (!isRootAt(instrument, root, rootPlace) || rootAt < 1 || rootAt > perString || isReentrant(instrument))
    return undefined;
  const noteAt = ladderFrom(toneDegrees(tones));
  const rootMidi = midiAt(instrument, rootPlace);
  const notes = [...stringNumbers(instrument)].reverse().flatMap((string) =>
    Array.from({ length: perString }, (_, index): ShapeNote => {
      const steps = (rootPlace.string - string) * perString + index + 1 - rootAt;
      const { degree, semitones } = noteAt(steps);
      const fret = rootMidi + semitones - midiAt(instrument, place(string, 0));
      return { place: place(string, fret), degree, finger: 0, optional: false };
    }),
  );
  if (!notes.every((note) => isOnNeck(instrument, note.place))) return undefined;
  return { notes, accepted: notes.map((note) => note.place), rootAt };
}

/**
 * The patterns of so many notes on each string round a root, for every place among the notes of its string, from the
 * nut to the bridge: three notes from a root on string 2 are up to three patterns.
 */
export function patternsFrom(
  instrument: Instrument,
  root: NoteName,
  tones: ToneSetId,
  rootPlace: Place,
  notes: PatternChoice['notes'],
): readonly Pattern[] {
  return Array.from({ length: notes }, (_, index) => notes - index)
    .map((rootAt) => patternAt(instrument, root, tones, rootPlace, { notes, rootAt }))
    .filter((pattern) => pattern !== undefined);
}

/** The way along one string, from the nut up: C major pentatonic on string 2 has frets 1, 3, 5, 8, 10, 13 and on. */
export function alongString(
  instrument: Instrument,
  root: NoteName,
  tones: ToneSetId,
  string: StringNumber,
): readonly ShapeNote[] {
  const wholeNeck = { low: 0 as Fret, high: instrument.fretCount as Fret };
  return scalePlaces(instrument, root, tones, wholeNeck).filter((note) => note.place.string === string);
}

/** The degree so many tones above the root, or below it where negative, and how far that is. */
function ladderFrom(degrees: readonly Degree[]): (steps: number) => { degree: Degree; semitones: number } {
  const rungs = degrees
    .map((degree) => ({ degree, above: pitchClass(semitonesOf(degree)) }))
    .sort((a, b) => a.above - b.above);
  return (steps) => {
    const octaves = Math.floor(steps / rungs.length);
    const { degree, above } = known(rungs[steps - octaves * rungs.length], 'a tone of the set');
    return { degree, semitones: octaves * octave + above };
  };
}
