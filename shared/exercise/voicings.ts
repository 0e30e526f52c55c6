import { neededDegrees } from '../theory/chord-rule.ts';
import { chordDegrees } from '../theory/chord.ts';
import {
  midiAt,
  place,
  stringNumbers,
  type Instrument,
  type Place,
  type StringNumber,
} from '../theory/fretboard.ts';
import { pitchClass, pitchClassOf } from '../theory/pitch.ts';
import { voicingsOf } from '../theory/playable.ts';
import type { ShapeNote } from '../theory/shape.ts';
import type { BuildExercise } from './exercise.ts';
import { acceptedRoots, instrumentOf, isInRange, isRootBound, toneAt } from './roots.ts';
import type { Target } from './targets.ts';

/** Frets that a hand holds at once in a voicing that the project makes up. */
const voicingSpan = 3;
/** For each root a close voicing on the strings asked for, or on neighbours round it; lowest root first. */
export function voicingTargets(exercise: BuildExercise): readonly Target[] {
  const { voicing, quality } = exercise;
  const instrument = instrumentOf(exercise);
  const tones = [chordDegrees(quality).length, neededDegrees(quality).length];
  // A bass that is asked for may lie strings away from the root.
  const counts = exercise.bass
    ? stringNumbers(instrument).filter((count) => count >= Math.min(...tones))
    : tones;
  return acceptedRoots(exercise).flatMap((root) => {
    const easiest = voicing.kind === 'strings' ? easiestOn(exercise, root, voicing.strings) : undefined;
    if (easiest) return [easiest];
    const runs = voicing.kind === 'strings' ? [voicing.strings] : stringRuns(instrument, root.string, counts);
    for (const run of runs) {
      const first = voicingOn(exercise, root, run);
      if (first) return [first];
    }
    return [];
  });
}

/** What a hand holds most easily with this root on exactly these strings; the range is no matter where the root is bound. */
function easiestOn(
  exercise: BuildExercise,
  rootPlace: Place,
  strings: readonly StringNumber[],
): Target | undefined {
  if (!isRootBound(exercise)) return undefined;
  const [best] = voicingsOf(instrumentOf(exercise), exercise, { rootPlace, strings, most: 1 });
  return best && { notes: best.notes, accepted: best.notes.map((note) => note.place) };
}

/** The first voicing with this root on these strings, all of which sound. */
function voicingOn(
  exercise: BuildExercise,
  root: Place,
  strings: readonly StringNumber[],
): Target | undefined {
  const instrument = instrumentOf(exercise);
  if (!strings.includes(root.string) || strings.some((string) => string > instrument.openStrings.length))
    return undefined;
  const wholeInRange = exercise.strictness === 'range' ? exercise.range : null;
  const low = Math.max(0, root.fret - voicingSpan);
  const high = Math.min(instrument.fretCount, root.fret + voicingSpan);
  const options = strings.map((string): readonly ShapeNote[] => {
    const notes: ShapeNote[] = [];
    for (let fret = low; fret <= high; fret += 1) {
      const spot = place(string, fret);
      const degree = toneAt(exercise, spot);
      if (degree === undefined || (string === root.string && fret !== root.fret)) continue;
      if (isInRange(wholeInRange, spot)) notes.push({ place: spot, degree, finger: 0, optional: false });
    }
    return notes;
  });
  const needed = neededDegrees(exercise.quality);
  for (const notes of combinations(options)) {
    const isWhole = needed.every((degree) => notes.some((note) => note.degree === degree));
    if (isWhole && hasBass(exercise, notes)) return { notes, accepted: notes.map((note) => note.place) };
  }
  return undefined;
}

function hasBass(exercise: BuildExercise, notes: readonly ShapeNote[]): boolean {
  if (!exercise.bass) return true;
  const instrument = instrumentOf(exercise);
  const lowest = Math.min(...notes.map((note) => midiAt(instrument, note.place)));
  return pitchClass(lowest) === pitchClassOf(exercise.bass);
}

/** One note a string, all under one hand; grown string by string, so that what is too wide is dropped early. */
function* combinations(
  options: readonly (readonly ShapeNote[])[],
  grown: readonly ShapeNote[] = [],
): Generator<readonly ShapeNote[]> {
  const [choices, ...rest] = options;
  if (!choices) yield grown;
  for (const note of choices ?? []) {
    const notes = [...grown, note];
    const frets = notes.map((one) => one.place.fret);
    if (Math.max(...frets) - Math.min(...frets) <= voicingSpan) yield* combinations(rest, notes);
  }
}

/** Neighbouring strings that may carry a chord of so many tones; first those that have the root in their midst. */
function stringRuns(
  instrument: Instrument,
  rootString: StringNumber,
  counts: readonly number[],
): readonly (readonly StringNumber[])[] {
  const strings = stringNumbers(instrument);
  return [...new Set(counts)].flatMap((count) => {
    const last = strings.length - count;
    const wished = Math.max(0, Math.min(rootString - 2, last));
    return Array.from({ length: Math.max(0, last + 1) }, (_, first) => first)
      .filter((first) => strings.slice(first, first + count).includes(rootString))
      .sort((a, b) => Math.abs(a - wished) - Math.abs(b - wished))
      .map((first) => strings.slice(first, first + count));
  });
}
